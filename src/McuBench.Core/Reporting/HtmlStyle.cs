namespace McuBench.Core.Reporting;

/// <summary>How the page looks: on screens of any width, light and dark, and on paper.</summary>
internal static class HtmlStyle
{
    // A picture keeps white behind it, since its lines are drawn for paper; in the dark only the page around it turns.
    public const string Text = """
        :root { color-scheme: light dark; --ink: #1b1d1f; --paper: #fdfdfb; --rule: #c9ccc6; --faint: #555a5e; --link: #1a4f7a; }
        @media (prefers-color-scheme: dark) {
          :root { --ink: #e6e4df; --paper: #17191b; --rule: #44494d; --faint: #a9aeb2; --link: #9cc7ea; }
        }
        * { box-sizing: border-box; }
        html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
        body { max-width: 64rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; background: var(--paper); color: var(--ink); font: 1rem/1.55 "Charter", "Georgia", "DejaVu Serif", serif; overflow-wrap: anywhere; }
        h1, h2, h3, th, caption, figcaption, summary, nav, button, b { font-family: "Helvetica Neue", "Arial", "DejaVu Sans", sans-serif; }
        h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 1rem; }
        h2 { font-size: 1.25rem; margin: 2.5rem 0 .75rem; padding-top: .75rem; border-top: 2px solid var(--ink); }
        h3 { font-size: 1.05rem; margin: 1.75rem 0 .5rem; }
        p, li, caption, figcaption { max-width: 46rem; }
        ul { padding-left: 1.25rem; }
        li { margin: .4rem 0; }
        b { font-size: .9em; }
        a { color: var(--link); text-underline-offset: .15em; }
        a:focus-visible, button:focus-visible, summary:focus-visible, .wide:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
        nav ol { display: flex; flex-wrap: wrap; gap: .3rem 1.25rem; list-style: none; padding: 0; margin: 1.25rem 0 0; font-size: .9rem; }
        nav li { margin: 0; }
        .behind { font-size: .875rem; color: var(--faint); }
        .wide { overflow-x: auto; margin: 1rem 0; }
        table { border-collapse: collapse; font-size: .9rem; font-variant-numeric: tabular-nums; overflow-wrap: normal; }
        caption { text-align: left; font-size: .9rem; color: var(--faint); padding: 0 0 .4rem; }
        th, td { text-align: left; vertical-align: top; padding: .3rem .75rem .3rem 0; border-bottom: 1px solid var(--rule); }
        thead th { border-bottom: 1.5px solid var(--ink); font-size: .8rem; vertical-align: bottom; }
        tbody th { font-weight: inherit; font-family: inherit; min-width: 8.5rem; }
        tbody td:not(.figure) { min-width: 7.5rem; }
        th button { font: inherit; color: inherit; text-align: inherit; background: none; border: 0; padding: .15rem 0; cursor: pointer; text-decoration: underline dotted var(--faint); }
        [aria-sort=ascending] button::after { content: " ↑"; }
        [aria-sort=descending] button::after { content: " ↓"; }
        .figure { text-align: right; white-space: nowrap; }
        thead .figure { white-space: normal; }
        figure { margin: 1.5rem 0; }
        figure img { display: block; width: 100%; max-width: 40rem; height: auto; background: #fff; border-radius: 2px; }
        figcaption { font-size: .9rem; color: var(--faint); margin-top: .4rem; }
        details { margin: .5rem 0; }
        summary { cursor: pointer; font-size: .95rem; padding: .15rem 0; }
        details > :not(summary) { margin-left: 1rem; }
        button.save { font-size: .9rem; color: inherit; background: none; border: 1px solid var(--ink); border-radius: 3px; padding: .3rem .75rem; cursor: pointer; }
        code { font: .85em "DejaVu Sans Mono", monospace; }
        @media print {
          @page { size: A4; margin: 16mm; }
          :root { --ink: #000; --paper: #fff; --rule: #999; --faint: #333; --link: #000; }
          body { max-width: none; padding: 0; font-size: 9.5pt; }
          nav, details:not([open]), button.save { display: none; }
          a, th button { text-decoration: none; }
          .wide { overflow: visible; margin: .6rem 0; }
          table { font-size: 7pt; width: 100%; }
          th, td { padding: .15rem .4rem .15rem 0; }
          thead th { font-size: 6.5pt; }
          tbody th, tbody td:not(.figure) { min-width: 0; }
          .figure { white-space: normal; }
          h2 { margin-top: 1.5rem; }
          h2, h3, caption { break-after: avoid; }
          figure, tr, li { break-inside: avoid; }
          figure img { max-width: 12cm; }
        }
        """;
}
