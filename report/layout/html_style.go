package layout

// styleSheet is how a page looks: one column of text, two from 620 pixels on,
// black on white or, on a dark screen, white on black. On paper tables are whole
// and nothing that belongs together is torn apart.
const styleSheet = `:root { color-scheme: light dark; --ink: #000; --quiet: #444; --paper: #fff; --rule: #b4b4b4; }
@media (prefers-color-scheme: dark) { :root { --ink: #f2f2f2; --quiet: #c6c6c6; --paper: #111; --rule: #5a5a5a; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 48rem; padding: 1rem; background: var(--paper); color: var(--ink); font: 1rem/1.45 sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.22; margin: 1.2rem 0 .7rem; }
h2 { font-size: 1.15rem; line-height: 1.28; margin: 1.9rem 0 .5rem; }
h3 { font-size: 1rem; line-height: 1.3; margin: 1.3rem 0 .4rem; }
p, li { margin: .4rem 0; }
ul, ol { padding-left: 1.4rem; }
ul.ticks { list-style: "\2610\2002"; }
a { color: inherit; }
summary { padding: .6rem 0; cursor: pointer; }
nav li a { display: inline-block; padding: .3rem 0; }
.lede { font-size: 1.25rem; line-height: 1.35; }
.small, .tiny, footer { color: var(--quiet); font-size: .9rem; }
.fine, .tiny { font-size: .9rem; }
.note { border-left: 1px solid var(--ink); padding-left: .8rem; margin: 1rem 0; }
.heavy { border-left-width: .4rem; }
figure { margin: 1.2rem 0; }
figcaption { margin-bottom: .4rem; }
figcaption .small { display: block; }
svg { display: block; width: 100%; height: auto; color: var(--ink); font-family: sans-serif; }
svg text { white-space: pre; }
svg .paper { fill: var(--paper); }
svg .paper-line { stroke: var(--paper); }
table { border-collapse: collapse; width: 100%; margin: .8rem 0; font-size: .94rem; line-height: 1.35; }
.whole { overflow-wrap: break-word; }
th, td { text-align: left; vertical-align: top; padding: .3rem .5rem .3rem 0; border-top: 1px solid var(--rule); font-weight: normal; }
th:last-child, td:last-child { padding-right: 0; }
thead th, thead td { border-top: 0; border-bottom: 1px solid var(--ink); vertical-align: bottom; color: var(--quiet); font-size: .88rem; }
.right { text-align: right; }
.sum th, .sum td { border-top-color: var(--ink); }
td.framed, th.framed { border-left: 2px solid var(--ink); border-right: 2px solid var(--ink); padding: .3rem .5rem; }
.framed + td, .framed + th { padding-left: .5rem; }
thead .framed { border-top: 2px solid var(--ink); }
tbody tr:last-child .framed { border-bottom: 2px solid var(--ink); }
.way { border-top: 1px solid var(--rule); padding: .5rem 0; }
.way.framed { border: 2px solid var(--ink); padding: .5rem .7rem; }
.way p { margin: 0 0 .2rem; }
dl { margin: 0; }
dl div { display: flex; justify-content: space-between; gap: .8rem; padding: .12rem 0; }
dl .long { display: block; }
dt { color: var(--quiet); font-size: .9rem; }
dd { margin: 0; text-align: right; }
dl .long dd { text-align: left; }
.narrow, .less-wide { display: none; }
@media screen and (max-width: 619px) { .narrow { display: block; } table.wide { display: none; } }
@media screen and (max-width: 799px) { .less-wide { display: block; } table.wider { display: none; } }
@media screen and (max-width: 799px) { .side .whole { overflow-wrap: anywhere; } }
@media (min-width: 620px) { .side { display: grid; grid-template-columns: var(--columns); gap: 0 1.6rem; align-items: start; } }
@media print { nav { display: none; } body { max-width: none; padding: 0; font-size: 10pt; } h1, h2, h3, figcaption { break-after: avoid; } tr, figure, .kept, .note { break-inside: avoid; } section + section { break-before: page; } }
`
