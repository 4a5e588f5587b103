using System.Security.Cryptography;
using System.Text;

namespace McuBench.Core.Reporting;

/// <summary>What the page can do where scripts run: sort a table by any column, unfold what a link leads to, save what
/// is enclosed. Without it the page reads the same.</summary>
internal static class HtmlScript
{
    public static readonly string Text = """
        "use strict";
        (() => {
          const turned = { none: "ascending", ascending: "descending", descending: "none" };
          const key = (row, column) => {
            const cell = row.cells[column];
            return cell.dataset.order === undefined ? cell.textContent : Number(cell.dataset.order);
          };
          // Numbers come before words, whichever way the numbers run.
          const compare = (a, b, sign) =>
            typeof a === "number" && typeof b === "number" ? sign * (a - b)
            : typeof a === "number" ? -1
            : typeof b === "number" ? 1
            : sign * a.localeCompare(b, "en", { numeric: true });
          for (const table of document.querySelectorAll("table")) {
            const body = table.tBodies[0];
            const asWritten = [...body.rows];
            if (asWritten.length < 2) continue;
            const heads = [...table.tHead.rows[0].cells];
            heads.forEach((head, column) => {
              const button = document.createElement("button");
              button.type = "button";
              button.append(...head.childNodes);
              head.append(button);
              button.addEventListener("click", () => {
                const now = turned[head.getAttribute("aria-sort") ?? "none"];
                heads.forEach(other => other.removeAttribute("aria-sort"));
                if (now !== "none") head.setAttribute("aria-sort", now);
                const sign = now === "descending" ? -1 : 1;
                body.append(...(now === "none" ? asWritten
                  : asWritten.toSorted((a, b) => compare(key(a, column), key(b, column), sign))));
              });
            });
          }
          const reveal = () => {
            const target = document.getElementById(location.hash.slice(1));
            for (let part = target; part; part = part.parentElement) {
              if (part.tagName === "DETAILS") part.open = true;
            }
            target?.scrollIntoView();
          };
          addEventListener("hashchange", reveal);
          if (location.hash) reveal();
          for (const button of document.querySelectorAll("button.save")) {
            button.hidden = false;
            button.addEventListener("click", async () => {
              const text = document.getElementById(button.dataset.of).textContent;
              const packed = Uint8Array.from(atob(text), c => c.charCodeAt(0));
              const file = new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip")));
              const link = document.createElement("a");
              link.href = URL.createObjectURL(await file.blob());
              link.download = button.dataset.name;
              link.click();
              setTimeout(() => URL.revokeObjectURL(link.href), 60000);
            });
          }
        })();
        """.ReplaceLineEndings("\n");

    /// <summary>What the page's policy knows the script by, so that no other can run.</summary>
    public static readonly string Hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)));
}
