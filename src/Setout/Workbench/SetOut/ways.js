// Which thing of the drawing each arrow leads to. Reckoned for the drawing as a whole, so that nothing on it is left out: what no arrow would lead to is put on the way between two others.
export const directions = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

// In units of the paper, so that looking closer changes no way.
const same = 0.2, cone = 2, wide = 3;
const apart = (a0, a1, b0, b1) => Math.max(0, b0 - a1, a0 - b1);

/** How far it is to something that reaches farther that way; null where it does not. What lies aside counts more, and what is of the other kind. */
function far(from, to, [dx, dy], isStrict) {
  const along = dx > 0 ? to.right - from.right : dx < 0 ? from.left - to.left : dy > 0 ? to.bottom - from.bottom : from.top - to.top;
  const aside = dx ? apart(from.top, from.bottom, to.top, to.bottom) : apart(from.left, from.right, to.left, to.right);
  if (along < same || (isStrict && aside > along * cone)) return null;
  // From a member one goes to the member or opening beside it before one goes to a dimension; along dimensions from one to the next.
  return (along + aside * wide) * (to.isSize === from.isSize ? 1 : to.isSize ? 3 : 1.5);
}

function nearest(boxes, at, way, isStrict) {
  let best = -1, least = Infinity;
  for (let to = 0; to < boxes.length; to++) {
    const distance = to === at ? null : far(boxes[at], boxes[to], way, isStrict);
    if (distance !== null && distance < least) [best, least] = [to, distance];
  }
  return best;
}

function met(from, next) {
  const there = new Set([from]), open = [from];
  while (open.length > 0) {
    for (const to of next(open.pop())) {
      if (to < 0 || there.has(to)) continue;
      there.add(to);
      open.push(to);
    }
  }
  return there;
}

// What lies in the same place as another reaches farther in no way; it comes after it.
const isSame = (a, b) => ['left', 'right', 'top', 'bottom'].every(side => Math.abs(a[side] - b[side]) < same);

/** Puts the nearest of some on the way from one of others to where that led: one goes on there by the same arrow. */
function putBetween(boxes, ways, some, others) {
  let put = null;
  for (const to of some) {
    for (const at of others) {
      for (const key of Object.keys(directions)) {
        const distance = isSame(boxes[at], boxes[to]) ? 0 : far(boxes[at], boxes[to], directions[key], false);
        if (distance !== null && !(put && distance >= put.distance)) put = { at, to, key, distance };
      }
    }
  }
  // What reaches farther than none of them lies within one of them.
  put ??= { at: others.at(-1), to: some[0], key: 'ArrowRight' };
  const there = ways[put.at][put.key];
  ways[put.at][put.key] = put.to;
  if (there >= 0) ways[put.to][put.key] = there;
}

/**
 * For each box, with left, right, top, bottom and isSize, which one each arrow key leads to; -1 for none. The nearest in a cone that way, else the nearest that reaches farther that way at all.
 * Each is reached from the first, and the first from each.
 */
export function waysOf(boxes) {
  const keys = Object.keys(directions), all = boxes.map((_, at) => at);
  const ways = all.map(at => Object.fromEntries(keys.map(key => {
    const straight = nearest(boxes, at, directions[key], true);
    return [key, straight >= 0 ? straight : nearest(boxes, at, directions[key], false)];
  })));
  // What is put in may take the way of another, which is put in next; seldom more than a few.
  for (let turn = 0; turn < 2 * boxes.length; turn++) {
    const there = met(0, at => Object.values(ways[at])), left = all.filter(at => !there.has(at));
    if (left.length > 0) {
      putBetween(boxes, ways, left, [...there]);
      continue;
    }
    const back = met(0, to => all.filter(at => Object.values(ways[at]).includes(to))), lost = all.filter(at => !back.has(at));
    if (lost.length === 0) break;
    putBetween(boxes, ways, [0], lost);
  }
  return ways;
}
