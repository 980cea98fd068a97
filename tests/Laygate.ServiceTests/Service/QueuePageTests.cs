using System.Net;
using System.Text.RegularExpressions;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests.Service;

/// <summary>The list of submissions as reviewers use it, by forms and links alone.</summary>
public sealed class QueuePageTests : IAsyncLifetime
{
    private RunningService running = null!;
    private HttpClient ada = null!;
    private HttpClient rita = null!;

    public async Task InitializeAsync()
    {
        running = await RunningService.StartAsync(null, "RequestsPerMinute=100000");
        ada = running.Client(await running.KeyAsync("Ada", Role.Submitter));
        rita = running.Client(await running.KeyAsync("Rita", Role.Reviewer));
        rita.DefaultRequestHeaders.Accept.ParseAdd("text/html");
    }

    public async Task DisposeAsync()
    {
        ada.Dispose();
        rita.Dispose();
        await running.DisposeAsync();
    }

    [Fact]
    public async Task A_decision_from_the_list_leads_to_the_next_one_in_its_order_and_at_the_end_back_to_it()
    {
        var early = await AddAsync("one", "2027-06-01");
        var late = await AddAsync("two", "2027-06-02");
        var list = await rita.GetStringAsync("/submissions");
        Assert.InRange(list.IndexOf(early, StringComparison.Ordinal), 0, list.IndexOf(late, StringComparison.Ordinal));
        Assert.Contains("2 submissions", list, StringComparison.Ordinal);
        Assert.Contains("2027-06-01", list, StringComparison.Ordinal);
        var turned = await rita.GetStringAsync("/submissions?sort=shift&desc=true");
        Assert.InRange(turned.IndexOf(late, StringComparison.Ordinal), 0, turned.IndexOf(early, StringComparison.Ordinal));
        var link = WebUtility.HtmlDecode(Regex.Match(list, $"href=\"(?<way>/submissions/{early}[^\"]*)\"", RegexOptions.None, Patience.Longest).Groups["way"].Value);
        var page = await rita.GetStringAsync(link);
        using var first = await PostAsync($"/submissions/{early}/decision", page, ("verdict", "Returned"), ("comment", "Mend it."));
        var next = first.Headers.Location!.ToString();
        Assert.StartsWith($"/submissions/{late}?", next, StringComparison.Ordinal);
        page = await rita.GetStringAsync(next);
        Assert.Contains("This is the next one.", page, StringComparison.Ordinal);
        using var second = await PostAsync($"/submissions/{late}/decision", page, ("verdict", "Returned"), ("comment", "Mend it."));
        var end = second.Headers.Location!.ToString();
        Assert.StartsWith("/submissions?", end, StringComparison.Ordinal);
        var rest = await rita.GetStringAsync(end);
        Assert.Contains("Nothing waits for a decision.", rest, StringComparison.Ordinal);
        Assert.Contains("is now returned", rest, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_nobody_can_judge_is_returned_together_and_what_is_not_returned_stays_chosen_with_the_comment()
    {
        var (first, second) = (await UnreadableAsync("a"), await UnreadableAsync("b"));
        var good = await AddAsync("good", "2027-06-01");
        var list = await rita.GetStringAsync("/submissions");
        Assert.Equal(2, Regex.Count(list, "name=\"chosen\"", RegexOptions.None, Patience.Longest));
        using var silent = await PostAsync("/submissions/return", list, ("chosen", first), ("chosen", second), ("comment", " "));
        var html = await silent.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.Conflict, silent.StatusCode);
        Assert.Equal(2, Regex.Count(html, "name=\"chosen\"[^>]* checked", RegexOptions.None, Patience.Longest));
        using var mixed = await PostAsync("/submissions/return", list, ("chosen", first), ("chosen", second.Split(':')[0] + ":0"), ("chosen", $"{good}:3"), ("comment", "Send it as YAML."));
        html = await mixed.Content.ReadAsStringAsync();
        Assert.Contains("1 returned.", html, StringComparison.Ordinal);
        Assert.Contains("has changed since you looked", html, StringComparison.Ordinal);
        Assert.Contains("it can be judged by now", html, StringComparison.Ordinal);
        Assert.Contains("Send it as YAML.", html, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(html, "name=\"chosen\"[^>]* checked", RegexOptions.None, Patience.Longest));
        using var rest = await PostAsync("/submissions/return", html, ("chosen", second), ("comment", "Send it as YAML."));
        Assert.Equal(HttpStatusCode.OK, rest.StatusCode);
        foreach (var one in new[] { first, second })
        {
            Assert.Equal("returned", (await RunningService.JsonAsync(await ada.GetAsync($"/api/v1/submissions/{one.Split(':')[0]}"))).GetProperty("state").GetString());
        }
    }

    [Fact]
    public async Task A_submission_is_taken_and_given_back_from_the_list_and_only_the_latest_revision_is_listed()
    {
        var id = await AddAsync("one", "2027-06-01");
        var revision = await AddAsync("one", "2027-06-03", id);
        var list = await rita.GetStringAsync("/submissions");
        Assert.DoesNotContain($"/submissions/{id}", list, StringComparison.Ordinal);
        Assert.Contains($"/submissions/{id}", await rita.GetStringAsync("/submissions?state=any&earlier=true"), StringComparison.Ordinal);
        var version = Regex.Match(list, $"action=\"/submissions/{revision}/take\".*?name=\"seen\" value=\"(?<v>[0-9]+)\"", RegexOptions.Singleline, Patience.Longest).Groups["v"].Value;
        using var taken = await PostAsync($"/submissions/{revision}/take", list, ("seen", version), ("back", "list"));
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.Contains($"/submissions/{revision}", await rita.GetStringAsync("/submissions?who=me"), StringComparison.Ordinal);
        Assert.Contains("Give back", await rita.GetStringAsync("/submissions"), StringComparison.Ordinal);
        Assert.DoesNotContain($"/submissions/{revision}", await rita.GetStringAsync("/submissions?who=nobody"), StringComparison.Ordinal);
    }

    private async Task<string> AddAsync(string title, string date, string? revisionOf = null)
    {
        var plan = RunningService.Plan("moor-road-thin-overlay.yaml").Replace("title: Skarrow", $"title: {title} Skarrow", StringComparison.Ordinal).Replace("2027-11-09", date, StringComparison.Ordinal);
        var id = await RunningService.SubmitAsync(ada, plan, revisionOf is null ? string.Empty : $"?revision_of={revisionOf}");
        await RunningService.ScreenedAsync(ada, id);
        return id;
    }

    private async Task<string> UnreadableAsync(string name)
    {
        var id = await RunningService.SubmitAsync(ada, $"{name}: [", $"?file_name={name}.yaml");
        return $"{id}:{(await RunningService.ScreenedAsync(ada, id)).GetProperty("version").GetInt64()}";
    }

    // Sends what the form of a page holds, its hidden fields included where the test names none.
    private async Task<HttpResponseMessage> PostAsync(string address, string page, params (string Name, string Value)[] fields)
    {
        Assert.True(page.Contains($"action=\"{address}", StringComparison.Ordinal), $"no form for {address}");
        var start = page.IndexOf(" id=\"page\"", StringComparison.Ordinal);
        var inside = page[start..page.IndexOf("</form>", start, StringComparison.Ordinal)];
        var hidden = Regex.Matches(inside, "<input type=\"hidden\" name=\"(?<name>[a-z]+)\" value=\"(?<value>[^\"]*)\"", RegexOptions.None, Patience.Longest)
            .Select(match => (Name: match.Groups["name"].Value, Value: WebUtility.HtmlDecode(match.Groups["value"].Value)))
            .Where(field => !fields.Any(own => string.Equals(own.Name, field.Name, StringComparison.Ordinal)));
        using var form = new FormUrlEncodedContent(hidden.Concat(fields).Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return await rita.PostAsync(address, form);
    }
}
