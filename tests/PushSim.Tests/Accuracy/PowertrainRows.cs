using PushSim.Analysis.Limits;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Scenarios.Estimates;
using PushSim.Tests.Analysis.Limits;
using PushSim.Tests.Powertrain;

namespace PushSim.Tests.Accuracy;

/// <summary>Motors, their heat, gears and batteries.</summary>
internal static class PowertrainRows
{
    private const double Rpm = Math.PI / 30.0;
    private const string Messner = "Messner, Tilbury, Control Tutorials for MATLAB and Simulink, DC Motor Speed: System Analysis";
    private const string Mit = "MIT course 2.007, Understanding D.C. Motor Characteristics";
    private const string Modelica = "Modelica Standard Library, Machines.Examples.DCMachines";
    private const string Chen = "Chen, Rincon-Mora, IEEE Trans. Energy Conversion 21(2), 2006, eq. 2, read second-hand; digits computed here";

    private static readonly Lazy<RunResult> s_step = new(MotorExternalTests.StepOfOneVolt);
    private static readonly Lazy<(double Eta, double Current)> s_best = new(ExternalLimitTests.BestEfficiency);

    private static double HalfTorque(double rpm, double stall) => ExternalLimitTests.Torque(ExternalLimitTests.OfTwoEnds(rpm * Rpm, stall), 0.5 * rpm * Rpm);

    private static double Warm(double temperature, double reference)
    {
        LimitModel<R1> model = ExternalLimitTests.Warm(temperature, reference);
        _ = ExternalLimitTests.Torque(model, 0.0);
        return model.MotorWork[0].Resistance.Value / 2.0;
    }

    private static double Books() => MotorFromData.Convert(new MotorData
    {
        Name = "m", Resistance = 1.03, Voltage = 50.0, NoLoadSpeed = 2100.0 * Rpm, NoLoadCurrent = 1.25,
    }).Settings!.TorqueConstant;

    private static double Power((double Voltage, double Current) load) => load.Voltage * load.Current;

    public static readonly AccuracyRow[] All =
    [
        new("motor at 1 V: steady speed, as printed", "rad/s", 0.1, 0.0005, Messner, () => MotorExternalTests.Speed(s_step.Value)),
        new("motor at 1 V: steady speed", "rad/s", 0.0999000999, 1e-9, Messner + "; digits computed here", () => MotorExternalTests.Speed(s_step.Value)),
        new("motor at 1 V: steady current", "A", 0.999000999, 1e-8, Messner + "; digits computed here", () => MotorExternalTests.Current(s_step.Value)),
        new("motor from a free and a blocked run, under viscous load", "rad/s", 37.5, 1e-6, "exercise on a problem site (transtutors.com, question 13712771); computed here", () => MotorExternalTests.Speed(MotorExternalTests.OfTwoTests(0.002))),
        new("motor, gear and load: speed per volt, settled", "rad/s/V", 0.0417 / 1.667, 0.0417 / 1.667 * 0.002, "Nise, Control Systems Engineering, example 2.23, from memory", () => MotorExternalTests.Speed(MotorExternalTests.Geared()) / 100.0 / (1.0 - Math.Exp(-5.0))),
        new("motor with brush drop at 20 A: speed", "rpm", 999.84, 0.005, "Hughes, Electric Motors and Drives, dc motor worked example, from memory (1000); digits computed here", () => MotorExternalTests.Speed(MotorExternalTests.WithBrushDrop(20.0)) / Rpm),
        new("torque constant from resistance and no-load test", "V s/rad", 0.2215096, 5e-8, "Fitzgerald, Kingsley, Umans, Electric Machinery, PM dc motor example, from memory; digits computed here", Books),
        new("600 rpm gear motor: torque at half speed", "N m", 0.163, 0.004 * 0.163, Mit, () => HalfTorque(600, 0.325)),
        new("3750 rpm motor: torque at half speed", "N m", 0.0361, 0.004 * 0.0361, Mit, () => HalfTorque(3750, 0.0722)),
        new("600 rpm gear motor: greatest power", "W", 5.105, 2e-4 * 5.105, Mit + "; computed here", () => 300.0 * Rpm * HalfTorque(600, 0.325)),
        new("100 V, 100 A motor: torque", "N m", 63.66198, 1e-5, Modelica + ".DCPM_withLosses; digits computed here", () => ExternalLimitTests.Torque(ExternalLimitTests.LargeMotor(), 1425.0 * Rpm)),
        new("100 V, 100 A motor: shaft power", "W", 9500.0, 1e-6, Modelica + ".DCPM_withLosses", () => 1425.0 * Rpm * ExternalLimitTests.Torque(ExternalLimitTests.LargeMotor(), 1425.0 * Rpm)),
        new("winding at 95 C over 20 C: resistance", "1", 1.29475, 2e-5, "IEC 60028, coefficient of copper, from memory", () => Warm(95.0, 20.0)),
        new("winding at 20 C over 80 C: resistance", "1", 0.80921, 2e-5, Modelica + ".DCPM_Temperature", () => Warm(20.0, 80.0)),
        new("best efficiency, 20 A stall, 0.8 A no load", "1", 0.64, 1e-5, "Braun, Formulae Handbook (a motor maker's), from memory", () => s_best.Value.Eta),
        new("current of the best efficiency", "A", 4.0, 0.02, "Braun, Formulae Handbook (a motor maker's), from memory", () => s_best.Value.Current),
        new("winding that heats itself at 2 A: rise", "K", 96.565, 0.02, "closed form, computed here", ExternalLimitTests.WarmedByHeldCurrent),
        new("spur gears, nine stages: efficiency", "1", 0.40, 0.02, "F. Faulhaber, Machine Design, 20 June 2002", () => GearStages.Efficiency(GearKind.Spur, 9)),
        new("planetary gears, three stages: efficiency", "1", 0.729, 1e-12, "a maker's page (greensky-power.com, planetary gearbox efficiency)", () => GearStages.Efficiency(GearKind.Planetary, 3)),
        new("polymer cell at full charge: voltage, formula", "V", 4.1029000, 5.1e-8, Chen, () => CellCurves.PolymerCellVoltage(1.0)),
        new("polymer cell at 10 %: voltage, formula", "V", 3.6745686, 5.1e-8, Chen, () => CellCurves.PolymerCellVoltage(0.1)),
        new("polymer cell at 10 %: voltage, the run's table", "V", 3.6745686, 0.003, Chen, () => BatteryExternalTests.FromTable(CellCurves.PolymerCell, 0.1)),
        new("hobby LiPo chart at 50 %", "V", 3.84, 1e-12, "hobby chart handed around, no measurement conditions, read second-hand", () => BatteryExternalTests.FromTable(CellCurves.HobbyChart, 0.5)),
        new("three cells, 180 mohm, at 10 A: bus voltage", "V", 10.8, 1e-9, "closed form, computed here", () => BatteryExternalTests.Stall(1.08).Voltage),
        new("three cells, 180 mohm: greatest power", "W", 220.5, 1e-6, "closed form, computed here", () => Power(BatteryExternalTests.Stall(0.18))),
    ];
}
