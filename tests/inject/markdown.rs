//! Markdown that would run something, or break out of where it stands, in a careless page.

/// What a coach may type into Markdown. Each stands by itself as a paragraph, and where it can in a heading, a list, a quote, a
/// table, a link's words, a picture's words, code and a footnote.
pub const MARKDOWN: &[&str] = &[
    "[x](<javascript:pwned()>)",
    "[x](java&#115;cript:pwned())",
    "[x](data:text/html,<script>pwned()</script>)",
    "[x](//evil.example/)",
    "[x](https://room.example/\"onmouseover=\"pwned())",
    "[x](https://room.example/ \"a\\\" onmouseover=\\\"pwned()\")",
    "![x\" onerror=\"pwned()](picture:line.svg)",
    "![<img src=x onerror=pwned()>](picture:line.svg)",
    "<javascript:pwned()>",
    "<https://room.example/'onmouseover='pwned()>",
    "# x {onclick=pwned()}",
    "[x]: javascript:pwned()\n\n[x]",
    "```\"><script>pwned()</script>\n</code></pre><script>pwned()</script>\n```",
    "```yaml\n</code><script>pwned()</script>: \"<img src=x onerror=pwned()>\"\n```",
    "[^\"><script>]: x\n\ny[^\"><script>]",
    "[](movement:plank\"onclick=\"pwned())",
    "[<img src=x onerror=pwned()>](movement:plank)",
    "| <script>pwned()</script> |\n|:--:|\n| <img src=x onerror=pwned()> |",
];
