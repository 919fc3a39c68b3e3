namespace Setout.Testing;

/// <summary>Names this assembly for tests that look at references.</summary>
public static class TestingAssembly;
