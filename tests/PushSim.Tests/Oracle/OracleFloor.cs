using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>A body's edges on the floor.</summary>
/// <param name="settings">What of it rubs.</param>
/// <param name="body">The body.</param>
internal sealed class OracleFloor(UndersideSettings settings, OracleBody body)
{
    private readonly double _damping = OracleRestitution.Damping(settings.Restitution);
    private readonly OracleRub _rub = new(settings.Friction, settings.FrictionDeflection);

    public void Push(double h)
    {
        double normal = 0.0;
        Vector place = default;
        foreach (OracleSolid solid in body.Solids)
        {
            foreach ((int from, int to) in solid.Edges)
            {
                (Vector p, Vector q) = (solid.Corners[from], solid.Corners[to]);
                if (p.Z >= 0.0 && q.Z >= 0.0)
                {
                    continue;
                }
                double length = (q - p).Length;
                (double area, double moment) = OraclePressure.Of(-0.5, 0.5, -p.Z, -q.Z, length);
                Vector at = (0.5 * (p + q)) + ((moment / area) * (q - p));
                double force = settings.Stiffness * OraclePressure.Lying(length, q.Z - p.Z) * area * Math.Max(0.0, 1.0 - (_damping * body.Velocity(at).Z));
                normal += force;
                place += force * at;
                body.Push(at, new Vector(0.0, 0.0, force));
            }
        }
        if (normal > 0.0)
        {
            Vector at = (1.0 / normal) * place;
            body.Push(at, _rub.Pull(h, normal, new Vector(0.0, 0.0, 1.0), body.Velocity(at), 0.0));
        }
        else
        {
            _rub.Rest(h);
        }
    }
}
