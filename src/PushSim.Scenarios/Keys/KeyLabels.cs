namespace PushSim.Scenarios.Keys;

/// <summary>Labels of keys whose name, with blanks for underscores, is not what a builder calls them. The others are called by their name.</summary>
internal static class KeyLabels
{
    private static readonly Dictionary<string, string> s_called = new(StringComparer.Ordinal)
    {
        ["chassis.front_scale_weight"] = "weight under the front", ["chassis.rear_scale_weight"] = "weight under the rear",
        ["chassis.left_scale_weight"] = "weight under the left", ["chassis.right_scale_weight"] = "weight under the right",
        ["chassis.tilt_rise"] = "rise of the tilt test", ["chassis.tilt_front_weight"] = "front weight in the tilt test", ["chassis.tilt_rear_weight"] = "rear weight in the tilt test",
        ["chassis.centre_of_mass.x"] = "balance point forward", ["chassis.centre_of_mass.y"] = "balance point to the left", ["chassis.centre_of_mass.height"] = "height of the balance point",
        ["chassis.roll_inertia"] = "inertia in roll", ["chassis.pitch_inertia"] = "inertia in pitch", ["chassis.yaw_inertia"] = "inertia in turning",
        ["chassis.downforce.force"] = "downforce", ["chassis.downforce.x"] = "place of the downforce, forward", ["chassis.downforce.y"] = "place of the downforce, left",
        ["tyre.static_friction"] = "grip before it slides", ["tyre.kinetic_friction"] = "sliding friction", ["tyre.slip_speed"] = "slip speed at which grip falls",
        ["tyre.breakaway_deflection"] = "give of the tread before it slides", ["tyre.viscous_friction"] = "rise of friction with slip speed",
        ["tyre.elastic_share"] = "elastic share of the grip", ["tyre.plain_friction"] = "plain friction law", ["tyre.rolling_renewal"] = "renewal of the tread as it rolls",
        ["tyre.body_stiffness"] = "stiffness of the tyre body", ["tyre.body_damping"] = "damping of the tyre body", ["tyre.vertical_stiffness"] = "stiffness under load",
        ["tyre.vertical_damping"] = "damping under load", ["tyre.load_exponent"] = "fall of grip with load", ["tyre.reference_load"] = "load of the stated grip",
        ["tyre.dusty_friction"] = "grip left when dusty", ["tyre.fouling_distance"] = "way until dusty", ["tyre.modulus"] = "stiffness of the rubber",
        ["tyre.shore_a"] = "hardness", ["tyre.solid_shore_a"] = "hardness of the solid rubber", ["tyre.own_share"] = "share that each tyre has for itself", ["motor.own_share"] = "share that each motor has for itself",
        ["tyre.wear"] = "wear number", ["tyre.friction_table"] = "grip over slip speed",
        ["wheel.x"] = "place of the wheel, forward", ["wheel.y"] = "place of the wheel, left", ["wheel.inertia"] = "inertia of the wheel", ["wheel.mass"] = "mass of the wheel", ["wheel.diameter"] = "wheel diameter", ["wheel.width"] = "wheel width", ["wheel.friction"] = "friction of the caster or skid", ["wheel.tyre"] = "tyre",
        ["motor.resistance"] = "winding resistance", ["motor.speed_constant"] = "speed constant", ["motor.torque_constant"] = "torque constant", ["motor.voltage"] = "voltage of the data sheet",
        ["motor.locked_rotor_voltage"] = "voltage of the locked test", ["motor.locked_rotor_current"] = "current of the locked test", ["motor.gear_ratio"] = "ratio of the motor's gearbox",
        ["motor.gear_efficiency"] = "efficiency of the motor's gearbox", ["motor.brush_drop"] = "voltage lost at the brushes", ["motor.rotor_inertia"] = "inertia of the rotor",
        ["motor.winding_to_case"] = "heat path from winding to case", ["motor.case_to_air"] = "heat path from case to air", ["motor.winding_limit"] = "hottest winding allowed",
        ["motor.standstill_torque_share"] = "torque at standstill without a sensor", ["motor.full_torque_speed"] = "speed of full torque without a sensor",
        ["drive.gear_ratio"] = "gear ratio", ["drive.gear_efficiency"] = "gear efficiency", ["drive.hold_torque"] = "torque that holds the drive",
        ["drive.friction_wind_up"] = "give of the gears' friction", ["drive.friction_damping"] = "damping of the gears' friction", ["drive.extra_inertia"] = "further inertia of the drive",
        ["controller.current_limit"] = "current limit", ["controller.on_resistance"] = "resistance when on", ["controller.slew"] = "slew of the throttle", ["controller.deadband"] = "dead band of the stick",
        ["battery.resistance"] = "battery resistance", ["battery.charge"] = "charge at the start", ["battery.cells"] = "cells in series", ["battery.capacity"] = "battery capacity", ["battery.cut_off"] = "cut-off voltage",
        ["outline.clearance"] = "clearance under the body", ["outline.top"] = "top of the body", ["outline.ramp.tip"] = "height of the ramp's tip", ["outline.ramp.angle"] = "angle of the ramp", ["outline.ramp.top"] = "top of the ramp",
        ["floor.friction"] = "grip of the floor", ["floor.dust"] = "dust", ["floor.slope_x"] = "slope forward", ["floor.slope_y"] = "slope to the left", ["floor.patch.friction"] = "grip of the patch",
        ["manoeuvre.heading"] = "start heading", ["opponent.heading"] = "start heading", ["manoeuvre.driver.reaction"] = "reaction time", ["opponent.driver.reaction"] = "reaction time",
        ["manoeuvre.driver.dead_time"] = "dead time of steering", ["opponent.driver.dead_time"] = "dead time of steering", ["manoeuvre.driver.steering"] = "gain of steering", ["opponent.driver.steering"] = "gain of steering",
        ["manoeuvre.driver.ease_to"] = "throttle after easing off", ["opponent.driver.ease_to"] = "throttle after easing off",
        ["manoeuvre.start"] = "moment of the first command", ["opponent.start"] = "moment of the first command", ["manoeuvre.ramp"] = "time to full throttle", ["opponent.ramp"] = "time to full throttle",
        ["manoeuvre.turn"] = "turn of the stick", ["opponent.turn"] = "turn of the stick", ["manoeuvre.end"] = "length of the run", ["manoeuvre.initial_speed"] = "speed at the start", ["opponent.initial_speed"] = "speed at the start",
        ["shove.gap"] = "gap at the start", ["shove.offset"] = "offset of the noses", ["shove.line"] = "distance to the line", ["shove.deciding_ground"] = "ground that decides",
        ["contact.stiffness"] = "stiffness of the bodies", ["contact.restitution"] = "restitution of the bodies", ["contact.friction"] = "friction of the bodies", ["contact.friction_memory"] = "time in which friction forgets a bump",
        ["tether.anchor_speed"] = "speed of the drag", ["tether.hook.height"] = "height of the hook", ["tether.anchor.height"] = "height of the anchor", ["tether.stiffness"] = "stiffness of the tether", ["tether.damping"] = "damping of the tether",
    };

    /// <summary>Tables and keys that have a label of their own, for a test that each is a key.</summary>
    public static IReadOnlyCollection<string> All => s_called.Keys;

    /// <summary>The label of a key.</summary>
    /// <param name="section">Its table.</param>
    /// <param name="name">Its name.</param>
    public static string Of(string section, string name) => s_called.GetValueOrDefault($"{section}.{name}") ?? name.Replace('_', ' ');
}
