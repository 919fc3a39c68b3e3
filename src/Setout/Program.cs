using Setout.Commands;

// Bare `setout` is `setout serve`; every other word is looked up and a mistyped one starts nothing.
string[] words = args.Length == 0 ? ["serve"] : args;
return await SetoutProgram.RunAsync(words, Terminal.Real());
