// Line kinds of ISO 128-2 and the marks of the look, once for screen and paper. Widths are in px at 96 to the inch: 2 is 0.5 mm.

/** The style of every drawing. Colours come from the custom properties of the page; without one the paper scheme holds. */
export const DRAWING_STYLE = `
.d{--d-paper:var(--paper,#fff);--d-ink:var(--ink,#12181B);--d-ink-2:var(--ink-2,#3F4B50);--d-ink-3:var(--ink-3,#5A676C);--d-blue:var(--blue-fill,#1F3DA6);--d-deep:var(--blue-deep,#142A78);--d-on:var(--on-blue,#fff);--d-red:var(--red,#A5280B);--d-brass:var(--brass,#775100);--d-verd:var(--verd,#0B5E50);font-family:var(--words,sans-serif)}
.d path,.d line,.d circle,.d rect,.d ellipse{fill:none;stroke:none}
.d .face{fill:var(--d-paper)}
.d .edge{stroke:var(--d-ink);stroke-width:2;stroke-linecap:round;stroke-linejoin:round}
.d .thin{stroke:var(--d-ink);stroke-width:1;stroke-linejoin:round}
.d .hatch{stroke:var(--d-ink-2);stroke-width:.9}
.d .centre{stroke:var(--d-ink);stroke-width:1.1;stroke-dasharray:26 5 3 5}
.d .chain{stroke:var(--d-ink);stroke-width:1;stroke-dasharray:16 4 2 4}
.d .open{stroke:var(--d-ink-2);stroke-width:1.2;stroke-dasharray:5 3}
.d .to-come{stroke:var(--d-ink-3);stroke-width:1;stroke-dasharray:16 3 2 3 2 3}
.d .doubt{stroke:var(--d-ink-2);stroke-width:1.2;stroke-linejoin:round}
.d .solid{fill:var(--d-ink);stroke:var(--d-ink);stroke-width:.6;stroke-linejoin:round}
.d .rubber{fill:var(--d-ink-3);stroke:var(--d-ink);stroke-width:.8;stroke-linejoin:round}
.d .cross{stroke:var(--d-ink);stroke-width:1.4;stroke-linecap:round}
.d .rubber-cross{stroke:var(--d-paper);stroke-width:1.4;stroke-linecap:round}
.d .work .face,.d .work .solid,.d .work .rubber{fill:var(--d-blue)}
.d .work .edge,.d .work .doubt,.d .work .open,.d .work .solid{stroke:var(--d-deep);stroke-width:2.5}
.d .work .hatch{stroke:var(--d-on);stroke-width:1;opacity:.6}
.d .work .cross,.d .work .rubber-cross{stroke:var(--d-on)}
.d .work .thin,.d .work .chain{stroke:var(--d-on)}
.d .way{stroke:var(--d-blue);stroke-width:2.5}
.d .way-head{fill:var(--d-blue)}
.d .halo{stroke:var(--d-paper);stroke-width:4}
.d .wide{stroke-width:7}
.d .wider{stroke-width:8}
.d .dot-halo{fill:var(--d-paper)}
.d .leader{stroke:var(--d-ink);stroke-width:1.1}
.d .dot{fill:var(--d-ink)}
.d .balloon{fill:var(--d-paper);stroke:var(--d-ink);stroke-width:1.2}
.d .number{font:600 16px var(--figures,monospace);text-anchor:middle;fill:var(--d-ink)}
.d .balloon.at-hand{fill:var(--d-blue);stroke:var(--d-deep)}
.d .number.at-hand{fill:var(--d-on)}
.d .small{font-size:12.5px}
.d .words{font-size:14px;fill:var(--d-ink)}
.d .told{font-size:13px;fill:var(--d-ink-2)}
.d .figure{font:500 13px var(--figures,monospace);fill:var(--d-ink)}
.d .figure.strong{font-weight:700}
.d .strong{font-weight:650}
.d .mid{text-anchor:middle}.d .far{text-anchor:end}
.d .asked{font:700 14px var(--figures,monospace);text-anchor:middle;fill:var(--d-ink-2);stroke:var(--d-paper);stroke-width:4;paint-order:stroke}
.d .look{fill:var(--d-brass)}.d .stop{fill:var(--d-red)}.d .good{fill:var(--d-verd)}
.d .worn-zone{fill:var(--brass-fill,#F2D48A);stroke:var(--d-ink-2);stroke-width:.8}
.d .range{stroke:var(--d-ink-2);stroke-width:4}
.d .on{fill:var(--d-on)}
.d .filled{fill:var(--well,#EDF1EE)}
.d .bar{stroke:var(--d-ink);stroke-width:2.4}
.d .heavy{stroke-width:1.4}
.d .next .face{fill:var(--d-blue)}.d .next .edge{stroke:var(--d-on)}.d .next .number{fill:var(--d-on)}
.d .tight .face{fill:var(--verd-fill,#BFE3D8)}.d .tight .edge{stroke:var(--d-verd)}
.d .waits{stroke:var(--d-ink);stroke-width:2;stroke-dasharray:2 5}
.d .hold{stroke:var(--d-ink);stroke-width:2}
.d .turn{stroke:var(--d-ink);stroke-width:1.8}
.d .arrow-head{fill:var(--d-ink)}
.d .hour{stroke:var(--rule,#9AA6A8);stroke-width:.8}
`
