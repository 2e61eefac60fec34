using PushSim.Files;
using PushSim.Scenarios.Starters;

namespace PushSim.Cli.New;

/// <summary>`pushsim new`: commented starter files that run as they are.</summary>
internal static class NewCommand
{
    private const string DefaultFolder = "pushsim-new";
    private const int MostBytes = 4_000_000;

    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="input">A person's terminal to ask on; null asks nothing.</param>
    /// <param name="cancel">Interrupt.</param>
    public static Command Create(TextWriter output, TextWriter error, TextReader? input, CancellationToken cancel)
    {
        var outDir = new Option<string>("--out") { Description = "Folder for the files.", HelpName = "DIR", DefaultValueFactory = _ => DefaultFolder };
        var kind = new Option<string>("--kind") { Description = "What the robot does.", HelpName = "KIND", DefaultValueFactory = _ => StarterFiles.DefaultKind };
        var name = new Option<string?>("--name") { Description = "Name of the robot.", HelpName = "NAME" };
        var mass = new Option<string?>("--mass") { Description = "Mass of the robot, for example 1.5kg; sizes and motors follow it. A bare number is kilograms below 30, else grams.", HelpName = "MASS" };
        var wheels = new Option<string?>("--wheels") { Description = "2, 4, 6 or 8 wheels; 2 have a ball in front.", HelpName = "N" };
        var motor = new Option<string?>("--motor") { Description = "Motor of the shelf, its class (\"25 mm\"), or its shop's words: \"25 mm, 12 V, 200 rpm, 8 kgf cm, 2.2 A\".", HelpName = "NAME" };
        var tyre = new Option<string?>("--tyre") { Description = "Tyre material of the shelf, an alias, or words of one.", HelpName = "NAME" };
        var force = new Option<bool>("--force") { Description = "Write anew; files that are there are moved aside." };
        var json = new Option<bool>("--json") { Description = "Print one JSON document." };
        var quiet = new Option<bool>("--quiet") { Description = "Print one line only." };
        var command = new Command(
            "new",
            "Writes a commented scenario and robot that run as they are.\n\n"
            + "On a terminal it asks for name, mass, wheels, motor and tyre unless one is given.\nChange them into your own. The schemas beside them let an editor complete\nand check while you type.\n\n"
            + "Kinds: " + Wrapped(StarterFiles.Kinds, "       ")
            + "\n\nExamples:\n  pushsim new\n  pushsim new --kind pull-test --out my-robot\n  pushsim new --kind shove --mass 450g --wheels 2 --motor \"16 mm\" --out ant")
        {
            outDir, kind, name, mass, wheels, motor, tyre, force, json, quiet,
        };
        CommonOptions.CheckFolder(outDir);
        kind.Validators.Add(found =>
        {
            string word = found.GetValueOrDefault<string?>() ?? "";
            if (StarterFiles.Find(word) is null)
            {
                found.AddError($"there is no kind \"{word}\"; {NearestWord.Advice(word, StarterFiles.Kinds)}choose from {string.Join(", ", StarterFiles.Kinds)}");
            }
        });
        command.SetAction(parsed =>
        {
            var answers = new StarterAnswers(parsed.GetValue(mass), parsed.GetValue(wheels), parsed.GetValue(motor), parsed.GetValue(tyre)) { Name = parsed.GetValue(name) };
            bool isAsked = input is not null && answers.IsEmpty && !parsed.GetValue(json) && !parsed.GetValue(quiet);
            string wrong = "";
            StarterDesign? design = isAsked ? StarterAnswers.Ask(input!, output) : answers.Design(out wrong);
            if (wrong.Length > 0)
            {
                error.WriteLine("pushsim: error: " + PlainText.Of(wrong));
                error.WriteLine("help: pushsim new --help, pushsim shelf");
                return ExitCode.WrongCommandLine;
            }

            return New(parsed.GetValue(outDir)!, StarterFiles.Find(parsed.GetValue(kind)!)!, design, answers.Notes(design), parsed.GetValue(force), parsed.GetValue(json), parsed.GetValue(quiet), output, error, cancel);
        });
        return command;
    }

    private static int New(string folder, string kind, StarterDesign? design, IReadOnlyList<string> notes, bool force, bool json, bool quiet, TextWriter output, TextWriter error, CancellationToken cancel)
    {
        if (Disk.Look(folder) == FileKind.File)
        {
            throw new IOException($"{folder} is a file; give another folder with --out");
        }

        // another command on this folder would take our half-written files for a killed one's
        using HeldLock held = FolderLock.Whole(folder, new LockAsk(folder, "new", message => error.WriteLine("pushsim: " + PlainText.Of(message)), cancel));
        IReadOnlyList<(string Name, string Text)> files = StarterFiles.Of(kind, design);
        (string Name, string Text)[] due = [.. files.Where((f, i) => i == 0 || !IsSame(Path.Combine(folder, f.Name), f.Text))];
        string[] inTheWay = force ? [] : [.. due.Where(f => Disk.Look(Path.Combine(folder, f.Name)) != FileKind.None).Select(f => f.Name)];
        if (inTheWay.Length > 0)
        {
            throw new IOException($"{folder} already has {string.Join(", ", inTheWay)}; give another folder with --out, or --force to move them aside");
        }

        Disk.MakeFolders(folder);
        List<string> written = [.. due.Select(f => Write(Path.Combine(folder, f.Name), f.Text, error))];
        string next = CommandLine.Of("run", [CommandLine.File(Path.Combine(folder, files[0].Name))]);
        string verdict = $"A starter scenario ({kind}) and its robot are in {folder}.";
        if (json)
        {
            output.WriteLine(JsonReport.Write(writer =>
            {
                JsonReport.WriteHead(writer, "new", verdict, notes);
                writer.WriteString("kind", kind);
                JsonReport.WriteTexts(writer, "files", written);
                writer.WriteString("next", next);
            }));
            return ExitCode.Done;
        }

        output.WriteLine(PlainText.Of(verdict));
        if (!quiet)
        {
            foreach (string note in notes)
            {
                output.WriteLine(PlainText.Of(note));
            }

            written.ForEach(path => output.WriteLine("wrote " + PlainText.Of(path)));
            output.WriteLine("next: " + PlainText.Of(next));
        }

        return ExitCode.Done;
    }

    // What is in the way is the user's: with --force it is moved aside, never lost.
    private static string Write(string path, string text, TextWriter error)
    {
        if (IsSame(path, text))
        {
            return path;
        }

        if (WriteGate.Aside(path) is string kept)
        {
            error.WriteLine($"pushsim: {PlainText.Of(path)} is kept as {PlainText.Of(Path.GetFileName(kept))}");
        }

        WriteGate.Create(path, s => s.Write(Encoding.UTF8.GetBytes(text)));
        return path;
    }

    private static bool IsSame(string path, string text) => Disk.Text(path, MostBytes) == text;

    private static string Wrapped(IReadOnlyList<string> words, string indent)
    {
        const int Width = 78;
        var text = new StringBuilder();
        int column = indent.Length;
        for (int i = 0; i < words.Count; i++)
        {
            string word = words[i] + (i + 1 < words.Count ? ", " : "");
            if (column + word.Length > Width)
            {
                text.Length--;
                text.Append('\n').Append(indent);
                column = indent.Length;
            }

            text.Append(word);
            column += word.Length;
        }

        return text.ToString();
    }
}
