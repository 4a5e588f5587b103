namespace ReportInBrowser.Tests;

/// <summary>A study whose every name tries to run, to close its element, or to be no name at all.</summary>
internal static class HostileStudy
{
    public const string Script = "<script>window.wasRun = 1</script>";

    public const string Json = """
        {
          "format": "McuBench study",
          "version": 1,
          "title": "</title><script>window.wasRun = 1</script>",
          "description": "--></style><img src=x onerror='window.wasRun = 1'>",
          "boards": [{ "name": "<script>window.wasRun = 1</script>" }, { "name": "=1+1" }],
          "setups": [
            { "name": "<script>window.wasRun = 1</script>", "board": "<script>window.wasRun = 1</script>", "clock": { "frequency": "160 MHz" } },
            { "name": "\" onmouseover=\"window.wasRun = 1", "board": "=1+1", "clock": { "frequency": "80 MHz" } }
          ],
          "workloads": [{ "name": "</script><svg onload='window.wasRun = 1'>", "workItemsPerRun": 100, "itemName": "a_very_long_name_without_a_single_place_to_break_it_at_all_which_goes_on" }],
          "timers": [{ "name": "javascript:window.wasRun=1", "resolution": "1 ms", "reading": "rounded" }],
          "trials": [
            { "setup": "<script>window.wasRun = 1</script>", "workload": "</script><svg onload='window.wasRun = 1'>", "timer": "javascript:window.wasRun=1", "runTime": "1.201 s", "specimen": "</p><script>window.wasRun = 1</script>" },
            { "setup": "<script>window.wasRun = 1</script>", "workload": "</script><svg onload='window.wasRun = 1'>", "timer": "javascript:window.wasRun=1", "runTime": "1.199 s" },
            { "setup": "\" onmouseover=\"window.wasRun = 1", "workload": "</script><svg onload='window.wasRun = 1'>", "timer": "javascript:window.wasRun=1", "runTime": "2.398 s" },
            { "setup": "\" onmouseover=\"window.wasRun = 1", "workload": "</script><svg onload='window.wasRun = 1'>", "timer": "javascript:window.wasRun=1", "runTime": "2.402 s" }
          ]
        }
        """;
}
