namespace Portwright.Web.Upkeep;

/// <summary>Files sent for import, held in memory while their mapping is looked at. The oldest gives way; nothing touches the disk.</summary>
public sealed class UploadShelf
{
    private const int Most = 6;
    private readonly Lock _lock = new();
    private readonly LinkedList<Upload> _files = [];

    /// <summary>Holds a file and gives it a number.</summary>
    public Upload Put(string name, byte[] content)
    {
        var upload = new Upload(Guid.CreateVersion7(), name, content);
        lock (_lock)
        {
            _files.AddLast(upload);
            while (_files.Count > Most)
            {
                _files.RemoveFirst();
            }
        }

        return upload;
    }

    /// <summary>The file of that number; null where it has given way or the workbench was started again.</summary>
    public Upload? Find(Guid number)
    {
        lock (_lock)
        {
            return _files.FirstOrDefault(f => f.Number == number);
        }
    }

    public void Remove(Guid number)
    {
        lock (_lock)
        {
            if (_files.FirstOrDefault(f => f.Number == number) is { } file)
            {
                _files.Remove(file);
            }
        }
    }
}

/// <summary>A file as it was sent.</summary>
public sealed record Upload(Guid Number, string Name, byte[] Content);
