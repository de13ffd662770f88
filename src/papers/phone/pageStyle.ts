/** The phone page's look: two grounds, one column, rows a thumb can hit. */
export const pageStyle = `
:root{color-scheme:light dark;--ground:#faf8f3;--ink:#1b1a17;--quiet:#5c5850;--line:#d3cec2;--accent:#2b5f8a}
@media (prefers-color-scheme:dark){:root{--ground:#15130f;--ink:#d8cdb9;--quiet:#9d9382;--line:#3a352c;--accent:#d9a55c}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:46rem;padding:0 1rem 6rem;background:var(--ground);color:var(--ink);font:1rem/1.4 'Atkinson Hyperlegible Next',system-ui,sans-serif;font-variant-numeric:tabular-nums;overflow-wrap:anywhere}
header{padding:1.25rem 0 .75rem;border-bottom:2px solid var(--ink)}
h1{font-size:1.5rem;line-height:1.15;margin:0}
h2{font-size:1.25rem;margin:2rem 0 .25rem;border-top:1px solid var(--line);padding-top:1rem}
h3{font-size:1rem;margin:1.25rem 0 .25rem}
p{margin:.25rem 0}
.quiet{color:var(--quiet);font-size:.875rem}
.alarm{border:3px solid var(--ink);border-width:3px 0;padding:.5rem 0;margin:1rem 0}
.alarm strong{font-size:1.5rem;display:block;line-height:1.2}
label.pick{display:block;margin:1rem 0}
select,button,input{font:inherit;color:inherit;background:var(--ground);border:1px solid var(--quiet);border-radius:2px;min-height:2.75rem;padding:.25rem .75rem}
select{width:100%}
nav{display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;margin:.5rem 0}
nav a{color:var(--accent);min-height:2.75rem;display:flex;align-items:center}
details{border-bottom:1px solid var(--line)}
summary{min-height:2.75rem;padding:.6rem 0;font-weight:600;cursor:pointer}
dl{margin:0 0 .75rem;display:grid;grid-template-columns:5rem 1fr;gap:.25rem .75rem}
dt{color:var(--quiet);font-size:.875rem}
dd{margin:0;white-space:pre-line}
.check{display:grid;grid-template-columns:2.75rem 1fr;align-items:start;border-bottom:1px solid var(--line);padding:.35rem 0}
.check input[type=checkbox]{width:1.6rem;height:1.6rem;min-height:0;margin:.35rem 0;accent-color:var(--accent)}
.check label{padding:.35rem 0;display:block}
.measure{grid-column:2;display:flex;gap:.5rem;align-items:center;flex-wrap:wrap}
.measure input{width:8rem;text-align:right}
.row{border-bottom:1px solid var(--line);padding:.5rem 0;display:grid;grid-template-columns:3rem 1fr;gap:.25rem}
.row b{font-size:1.1rem}
ol{padding-left:1.5rem;margin:.25rem 0 .75rem}
li{padding:.25rem 0}
footer{position:fixed;inset:auto 0 0;background:var(--ground);border-top:1px solid var(--ink);padding:.5rem 1rem;display:flex;gap:.75rem;align-items:center;justify-content:space-between}
footer button{font-weight:600;border:2px solid var(--ink)}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
section[hidden]{display:none}
`;
