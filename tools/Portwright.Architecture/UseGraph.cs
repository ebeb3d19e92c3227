namespace Portwright.Architecture;

/// <summary>Rooms and which of them use which.</summary>
public sealed class UseGraph
{
    private readonly SortedDictionary<string, SortedSet<string>> _uses = new(StringComparer.Ordinal);

    /// <summary>All rooms, by name.</summary>
    public IReadOnlyList<string> Rooms => [.. _uses.Keys];

    public void Add(string room) => _uses.TryAdd(room, new(StringComparer.Ordinal));

    public void Add(string room, string used)
    {
        Add(room);
        Add(used);
        _uses[room].Add(used);
    }

    /// <summary>What a room uses, by name.</summary>
    public IReadOnlyCollection<string> UsedBy(string room) => _uses[room];

    /// <summary>True where one room reaches the other by its uses and theirs.</summary>
    public bool Reaches(string from, string to)
    {
        var seen = new HashSet<string>();
        var open = new Stack<string>([from]);
        while (open.TryPop(out var room))
        {
            foreach (var used in _uses[room])
            {
                if (used == to) return true;
                if (seen.Add(used)) open.Push(used);
            }
        }

        return false;
    }

    /// <summary>True where two rooms use one another, if only through others: neither stands above.</summary>
    public bool AreTied(string one, string other) => Reaches(one, other) && Reaches(other, one);

    /// <summary>Pairs of rooms that use one another directly or through others, with at least one direct use between them.</summary>
    public IEnumerable<(string One, string Other)> Ties() =>
        from one in Rooms
        from other in Rooms
        where string.CompareOrdinal(one, other) < 0 && (_uses[one].Contains(other) || _uses[other].Contains(one)) && AreTied(one, other)
        select (one, other);

    /// <summary>The uses that do not follow from other uses: without ties this is the transitive reduction.</summary>
    public IEnumerable<(string Used, string User)> Plain() =>
        from user in Rooms
        from used in _uses[user]
        where !AreTied(user, used) && !_uses[user].Any(between => between != used && !AreTied(between, user) && !AreTied(between, used) && Reaches(between, used))
        select (used, user);

    /// <summary>How many rooms stand above one another up to each: 0 for what uses nothing; tied rooms stand on one level.</summary>
    public IReadOnlyDictionary<string, int> Levels()
    {
        var levels = new Dictionary<string, int>();
        int Level(string room)
        {
            if (levels.TryGetValue(room, out var known)) return known;
            var tied = Rooms.Where(r => r == room || AreTied(r, room)).ToList();
            var below = tied.SelectMany(r => _uses[r]).Where(u => !tied.Contains(u)).Distinct().ToList();
            var level = below.Count == 0 ? 0 : below.Max(Level) + 1;
            foreach (var r in tied) levels[r] = level;
            return level;
        }

        foreach (var room in Rooms) Level(room);
        return levels;
    }
}
