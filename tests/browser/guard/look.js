// What is wrong with the marks and boxes that a page shows, one by one; and whether the guard says so.
const faults = [];
const part = (text) => text.match(/[\d.]+/g).map(Number);
const light = ([r, g, b]) => {
  const [x, y, z] = [r, g, b].map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
  return 0.2126 * x + 0.7152 * y + 0.0722 * z;
};
// WCAG 2.2, 1.4.3.
const contrast = (a, b) => { const [x, y] = [light(a), light(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
const look = (element, words, what) => {
  const fault = (says) => faults.push(`${what}: ${says}`);
  element.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
  if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true })) return fault('not visible');
  const box = words.getBoundingClientRect();
  if (box.width < 20 || box.height < 7) return fault(`${box.width} by ${box.height} pixels`);
  if (box.left < 0 || box.right > innerWidth || box.top < 0 || box.bottom > innerHeight) return fault(`at ${box.left}, ${box.top}`);
  for (const share of [0.2, 0.5, 0.8]) {
    const over = document.elementFromPoint(box.left + box.width * share, box.top + box.height / 2);
    if (!over || !(element.contains(over))) return fault(`covered by ${over && over.localName}.${over && over.className}`);
  }
  const style = getComputedStyle(words);
  if (parseFloat(style.fontSize) < 9) fault(`letters of ${style.fontSize}`);
  if (style.webkitTextFillColor !== style.color) fault('letters filled');
  if (part(style.webkitTextStrokeWidth)[0] !== 0) fault('letters with an edge');
  if (style.webkitTextSecurity && style.webkitTextSecurity !== 'none') fault('dots');
  if (parseFloat(style.letterSpacing) < 0) fault('letters on letters');
  let at = words;
  while (at && (part(getComputedStyle(at).backgroundColor)[3] === 0)) at = at.parentElement;
  const ratio = contrast(part(style.color), part(getComputedStyle(at || document.body).backgroundColor));
  if (ratio < 4.5) fault(`contrast ${ratio.toFixed(2)}`);
  for (let around = element; around; around = around.parentElement) {
    const { opacity, filter, mixBlendMode, clipPath, maskImage, webkitMaskImage } = getComputedStyle(around);
    if (opacity !== '1' || filter !== 'none' || mixBlendMode !== 'normal' || clipPath !== 'none' || ![maskImage || 'none', webkitMaskImage || 'none'].every((m) => m === 'none')) fault(`${around.localName}: ${opacity} ${filter} ${mixBlendMode} ${clipPath} ${maskImage}`);
  }
  return null;
};
const main = document.querySelector('main');
const marks = [...main.querySelectorAll('.named > [data-caution]')].filter((m) => !m.closest('details:not([open]), .paper-only')).slice(0, 6);
const head = main.querySelector('h1 > [data-caution]');
// A mark in a list is its sign alone.
const isSign = (mark) => !mark.closest('h1, h2, h3, h4, h5, h6');
for (const mark of head ? [head, ...marks] : marks) look(mark, isSign(mark) ? mark : mark.querySelector('.mark-word'), `mark of ${mark.closest('[data-movement]')?.dataset.movement}`);
for (const section of [...main.querySelectorAll('section[data-caution]')].slice(0, 3)) {
  // What is folded is one touch away: the line over it is in sight, and what is under it once it is touched.
  for (const line of section.querySelectorAll('summary')) {
    look(section, line, `line, ${line.textContent.slice(0, 20)}`);
    if (!line.parentElement.open) line.click();
  }
  for (const words of section.querySelectorAll('strong, .caution-head > span, dt, dd')) look(section, words, `box, ${words.localName} ${words.textContent.slice(0, 20)}`);
}
return { faults, marks: marks.length, boxes: main.querySelectorAll('section[data-caution]').length, said: Boolean(document.getElementById('guard-gone')) };
