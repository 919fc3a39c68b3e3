// What follows while one types, drags and walks on the drawing.
import './trying.js';
import './sizing.js';
import './gripping.js';
import './zooming.js';
import './walking.js';
import './costing.js';
import './outline.js';
import './roving.js';
import './making.js';
