using Portwright.Engine.Runs;
using Portwright.Shop.Record;
using Portwright.Shop.Runs;
using Portwright.Web.Shell;

namespace Portwright.Web.Engine;

/// <summary>The engine run in the words pages use.</summary>
public static class EngineWords
{
    /// <summary>A printed number with its sign, one that rounds to nothing without.</summary>
    public static string Sign(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return number.StartsWith('-') ? Minus(number) : number.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? number : $"+{number}";
    }

    /// <summary>A printed number with a minus that is as wide as a plus; hyphens of its unit stay.</summary>
    public static string Minus(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        return number.StartsWith('-') ? $"−{number[1..]}" : number;
    }

    /// <summary>How a batch stands: <c>211 of 585 runs, about 12 s left</c>.</summary>
    public static string Of(BatchProgress progress) =>
        FormattableString.Invariant($"{progress.Done} of {progress.Total} runs") + (progress.Left is { } left ? $", about {Time(left)} left" : "");

    /// <summary>What the whole is said of: <c>the cuts of intake 2 and exhaust 2</c>.</summary>
    public static string Through(EngineChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return string.Join(" and ", new[] { choice.Intake?.Words, choice.Exhaust?.Words }.OfType<string>());
    }

    /// <summary>Where am I: the job, this page, and the ports that can be changed.</summary>
    public static IReadOnlyList<Word> Where(Kept<Job> job, EngineChoice choice, string under = "", string more = "", string page = "")
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(choice);
        List<Word> words = [new(job.Fact.Name, $"/job/{job.Id}"), new("engine run", EngineAddress.Of(choice).Href(), Last: page.Length == 0)];
        if (page.Length > 0) words.Add(new(page, Last: true));
        foreach (var kind in new[] { PortKind.Intake, PortKind.Exhaust })
        {
            if (choice.Of(kind) is not { } taken) continue;
            words.Add(new(taken.Words, Before: kind == PortKind.Intake || choice.Intake is null ? "through" : "and")
            {
                Choices =
                [
                    .. choice.Choices.Where(c => c.Port.Fact.Kind == kind)
                        .Select(c => new Choice($"{c.Head.Fact.Name}, {c.Words}: {c.Cut.Fact.Done}", EngineAddress.Of(choice.With(c)).Href(under, more), c.Cut.Id == taken.Cut.Id)),
                ],
            });
        }

        return words;
    }

    private static string Time(TimeSpan left) => left.TotalSeconds < 90
        ? FormattableString.Invariant($"{Math.Max(1, Math.Ceiling(left.TotalSeconds)):0} s")
        : FormattableString.Invariant($"{Math.Ceiling(left.TotalMinutes):0} min");
}
