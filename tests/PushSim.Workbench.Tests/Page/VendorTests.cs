using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PushSim.Cli.Tests;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>The libraries that lie with the page are those of their packages, byte for byte but for module specifiers.</summary>
public class VendorTests
{
    private static string Folder => Path.Combine(Repository.Root, "src", "PushSim.Workbench", "wwwroot", "vendor");

    [Fact]
    public void Every_file_is_in_the_manifest_and_has_its_hash()
    {
        List<VendorFile> files = Manifest();
        Assert.Equal([.. files.Select(f => f.File).Append("manifest.json").Order(StringComparer.Ordinal)], [.. Directory.EnumerateFiles(Folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)]);
        Assert.All(files, f => Assert.Equal(f.Sha256, Hash(Original(f))));
        foreach (IGrouping<string, VendorFile> package in files.GroupBy(f => f.Package))
        {
            VendorFile licence = Assert.Single(package, f => f.File.EndsWith(".LICENSE.txt", StringComparison.Ordinal));
            string text = File.ReadAllText(Path.Combine(Folder, licence.File));
            Assert.Contains(licence.Licence == "MIT" ? "MIT License" : "Apache License", text, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void A_changed_byte_is_noticed()
    {
        VendorFile file = Manifest()[0];
        byte[] bytes = Original(file);
        bytes[^1] ^= 1;
        Assert.NotEqual(file.Sha256, Hash(bytes));
    }

    // the registry's packages are outside the project; its client is asked, so no host is named here
    [Fact]
    public async Task They_are_the_files_of_the_packages_in_the_registry()
    {
        using var folder = new ScratchFolder();
        IGrouping<(string Package, string Version), VendorFile>[] packages = [.. Manifest().GroupBy(f => (f.Package, f.Version))];
        string[]? archives = await PackAsync([.. packages.Select(p => $"{p.Key.Package}@{p.Key.Version}")], folder.Path);
        Assert.SkipWhen(archives is null, "needs npm and the registry that it asks");
        Assert.Equal(packages.Length, archives!.Length);
        foreach ((IGrouping<(string Package, string Version), VendorFile> package, string archive) in packages.Zip(archives))
        {
            string unpacked = Path.Combine(folder.Path, package.Key.Package.Replace('/', '-'));
            Directory.CreateDirectory(unpacked);
            await using (FileStream zipped = File.OpenRead(archive))
            await using (var plain = new System.IO.Compression.GZipStream(zipped, System.IO.Compression.CompressionMode.Decompress))
            {
                await System.Formats.Tar.TarFile.ExtractToDirectoryAsync(plain, unpacked, overwriteFiles: false);
            }

            Assert.All(package, f => Assert.Equal(Hash(File.ReadAllBytes(Path.Combine(unpacked, "package", f.Path))), f.Sha256));
        }
    }

    // one archive a package, in their order
    private static async Task<string[]?> PackAsync(string[] packages, string folder)
    {
        try
        {
            using Process npm = Process.Start(new ProcessStartInfo("npm", ["pack", .. packages, "--silent", "--fetch-retries=0", "--fetch-timeout=8000"]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
            Task<string> told = npm.StandardError.ReadToEndAsync();
            string names = (await npm.StandardOutput.ReadToEndAsync()).Trim();
            await npm.WaitForExitAsync();
            _ = await told;
            return npm.ExitCode == 0 ? [.. names.Split('\n').Select(n => Path.Combine(folder, n.Trim()))] : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    // the specifiers that the manifest names are put back
    private static byte[] Original(VendorFile file)
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(Folder, file.File));
        if (file.Imports.Count == 0)
        {
            return bytes;
        }

        string text = Encoding.UTF8.GetString(bytes);
        foreach ((string name, string path) in file.Imports)
        {
            text = text.Replace($"from\"{path}\"", $"from\"{name}\"", StringComparison.Ordinal);
        }

        return Encoding.UTF8.GetBytes(text);
    }

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static List<VendorFile> Manifest()
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, "manifest.json")));
        return [.. json.RootElement.GetProperty("packages").EnumerateArray().SelectMany(p => p.GetProperty("files").EnumerateArray().Select(f => new VendorFile(
            Text(p, "package"), Text(p, "version"), Text(p, "license"), Text(f, "file"), Text(f, "path"), Text(f, "sha256"),
            f.GetProperty("imports").EnumerateObject().ToDictionary(i => i.Name, i => i.Value.GetString()!))))];
    }

    private static string Text(JsonElement of, string name) => of.GetProperty(name).GetString()!;

    private sealed record VendorFile(string Package, string Version, string Licence, string File, string Path, string Sha256, Dictionary<string, string> Imports);
}
