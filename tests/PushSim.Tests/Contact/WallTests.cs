using PushSim.Contact;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>The plan of a wall that lies askew.</summary>
public class WallTests
{
    // from (1, 2) to (4, 6), 5 m long and 0.5 m thick to the right, by the 3-4-5 triangle
    [Fact]
    public void A_wall_stands_to_the_right_of_its_line()
    {
        (double X, double Y)[] corners = new WallSettings(1.0, 2.0, 4.0, 6.0, Thickness: 0.5).Corners();
        (double X, double Y)[] expected = [(4.0, 6.0), (1.0, 2.0), (1.4, 1.7), (4.4, 5.7)];
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(expected[i].X, corners[i].X, 1e-12);
            Assert.Equal(expected[i].Y, corners[i].Y, 1e-12);
        }
    }
}
