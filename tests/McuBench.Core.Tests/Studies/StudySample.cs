using System.Text;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

/// <summary>An invented study with every property of the format, as the writer writes it.</summary>
internal static class StudySample
{
    public const string Json = """
        {
          "format": "McuBench study",
          "version": 1,
          "title": "Lake gauges",
          "description": "Which controller reads the echo sounders?",
          "invented": true,
          "boards": [
            {
              "name": "Schist",
              "description": "two kinds of core",
              "cores": [
                {
                  "name": "wide",
                  "description": "with a floating-point unit"
                },
                {
                  "name": "narrow"
                }
              ]
            }
          ],
          "setups": [
            {
              "name": "Schist wide 160",
              "board": "Schist",
              "core": "wide",
              "clock": {
                "frequency": "160 MHz",
                "tolerance": "50 ppm"
              },
              "supply": {
                "voltage": "5 V",
                "tolerance": "2 %",
                "input": "header pin",
                "fedElsewhereToo": false
              },
              "toolchain": {
                "name": "house compiler",
                "version": "4.1",
                "settings": [
                  "O2",
                  "code in RAM"
                ]
              },
              "attachments": [
                {
                  "kind": "display",
                  "name": "panel",
                  "state": "active"
                }
              ]
            }
          ],
          "workloads": [
            {
              "name": "echo spectrum",
              "workItemsPerRun": 1000,
              "itemName": "spectrum",
              "description": "1024 points",
              "outputChecksum": "9AF3"
            }
          ],
          "timers": [
            {
              "name": "ticks",
              "resolution": "1 us",
              "reading": "tickDifferenceRandomStart",
              "tolerance": "20 ppm",
              "place": "onBoard",
              "derivedFromChangedClock": false
            }
          ],
          "meters": [
            {
              "name": "bench meter",
              "ranges": [
                {
                  "fullScale": "50 mA",
                  "resolution": "10 uA",
                  "ofReading": "1.5 %",
                  "ofRange": "1 %",
                  "digits": 2,
                  "burdenAtFullScale": "100 mV"
                }
              ],
              "averagingTime": "400 ms",
              "zeroCheck": {
                "date": "2026-03-01",
                "expected": "0 A",
                "read": "-10 uA"
              },
              "knownLoadCheck": {
                "date": "2026-03-02",
                "expected": "10 mA",
                "read": "10.01 mA"
              }
            }
          ],
          "trials": [
            {
              "setup": "Schist wide 160",
              "workload": "echo spectrum",
              "timer": "ticks",
              "runTime": "412.1 ms",
              "order": 1,
              "session": "morning",
              "specimen": "no. 3",
              "build": "b17",
              "connection": "short cable, port 2",
              "temperature": "296.15 K",
              "outputChecksum": "9AF3"
            }
          ],
          "readings": [
            {
              "setup": "Schist wide 160",
              "meter": "bench meter",
              "phase": "running",
              "current": "31.02 mA",
              "workload": "echo spectrum",
              "point": "afterRegulator",
              "boardVoltage": "3.31 V",
              "range": "50 mA",
              "session": "morning",
              "specimen": "no. 3"
            },
            {
              "setup": "Schist wide 160",
              "meter": "bench meter",
              "phase": "attachmentAlone",
              "current": "4 mA",
              "point": "beforeRegulator",
              "attachment": "panel"
            }
          ]
        }

        """;

    public static Study Study { get; } = Read(Json);

    public static Study Read(string json) => StudyJson.Read(json, "study.json");

    public static string Write(Study study, StudyTables? tables = null)
    {
        using var stream = new MemoryStream();
        StudyJson.Write(stream, study, tables);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static StudyReadResult ReadWithFaults(string json, Func<string, Stream>? openTable = null) =>
        ReadWithFaults(Encoding.UTF8.GetBytes(json), openTable);

    public static StudyReadResult ReadWithFaults(byte[] json, Func<string, Stream>? openTable = null)
    {
        using var stream = new MemoryStream(json);
        return StudyJson.ReadWithFaults(stream, "study.json", openTable);
    }

    /// <summary>The sample with one text of it replaced by another; the text must be there.</summary>
    public static string With(string old, string changed)
    {
        Assert.Contains(old, Json, StringComparison.Ordinal);
        return Json.Replace(old, changed, StringComparison.Ordinal);
    }
}
