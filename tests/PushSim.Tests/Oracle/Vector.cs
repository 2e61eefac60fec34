namespace PushSim.Tests.Oracle;

/// <summary>Three numbers along x, y and up.</summary>
internal readonly record struct Vector(double X, double Y, double Z)
{
    public double Length => Math.Sqrt(Dot(this));

    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Vector operator *(double k, Vector a) => new(k * a.X, k * a.Y, k * a.Z);

    public double Dot(Vector b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    public Vector Cross(Vector b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));
}
