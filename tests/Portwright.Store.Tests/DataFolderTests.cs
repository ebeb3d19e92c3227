namespace Portwright.Store.Tests;

public sealed class DataFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_second_workbench_is_told_where_the_first_is_and_may_start_once_that_is_killed()
    {
        using (var first = Child.Start("hold", _folder.Path))
        {
            Assert.Equal("held", first.ReadLine());
            var problem = Assert.Throws<RecordProblem>(() => DataFolder.Hold(_folder.Path));
            Assert.Equal(RecordProblemKind.InUse, problem.Kind);
            Assert.Contains("http://127.0.0.1:5080", problem.Cure, StringComparison.Ordinal);
            Assert.Equal("http://127.0.0.1:5080", DataFolder.AddressOfHolder(_folder.Path));
            first.Kill();
            first.ReadToEnd();
        }

        Assert.Null(DataFolder.AddressOfHolder(_folder.Path));
        using var second = DataFolder.Hold(_folder.Path);
        Assert.Null(DataFolder.AddressOfHolder(_folder.Path));
    }

    [Fact]
    public void An_import_from_the_command_line_works_while_a_workbench_runs()
    {
        using var workbench = DataFolder.Hold(_folder.Path);
        using var journal = Journal.Open(_folder.Path);
        journal.Append(Invented.ShopNote());
        using (var child = Child.Start("append", _folder.Path, "0"))
        {
            child.ReadLine();
            child.Kill();
            child.ReadToEnd();
        }

        Assert.True(journal.ReadAll().Count >= 4);
        Assert.True(journal.Append(Invented.ShopNote()));
    }

    [Fact]
    public void Only_its_owner_may_enter_a_new_data_folder()
    {
        var made = DataFolder.Make(_folder.File("shop"));
        if (OperatingSystem.IsWindows())
        {
            Assert.True(Directory.Exists(made));
        }
        else
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(made));
        }
    }

    [Fact]
    public void Without_a_folder_given_the_platforms_own_place_is_taken()
    {
        Assert.Equal(DataFolder.Default, DataFolder.Resolve(null));
        Assert.Equal(DataFolder.Default, DataFolder.Resolve(" "));
        Assert.Equal("portwright", Path.GetFileName(DataFolder.Default), ignoreCase: true);
        Assert.True(Path.IsPathFullyQualified(DataFolder.Default));
        Assert.Equal(_folder.Path, DataFolder.Resolve(Path.Combine(_folder.Path, "x", "..")));
    }
}
