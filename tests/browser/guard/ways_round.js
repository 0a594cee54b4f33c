// Where each link leads and what a reader sees of each name, as this browser has it: what is not `upside` is told.
const { links, names } = arguments[0];
const wrong = [];
for (const href of links) {
  const page = new DOMParser().parseFromString('<a>go</a>', 'text/html');
  const base = page.createElement('base');
  base.href = 'https://test.example/c/a.html';
  page.head.append(base);
  const link = page.querySelector('a');
  link.setAttribute('href', href);
  const path = decodeURIComponent(new URL(link.href).pathname).replace(/[/]+/g, '/').toLowerCase();
  if (!/^[/]c[/](old-)?upside([.]html|[/])?$/.test(path)) wrong.push(`${href} leads to ${link.href}`);
}
const wide = (text) => {
  const line = document.createElement('span');
  line.textContent = text;
  document.body.append(line);
  const { width } = line.getBoundingClientRect();
  line.remove();
  return width;
};
for (const name of names) {
  const text = new DOMParser().parseFromString(`<p>${name}</p>`, 'text/html').querySelector('p').textContent.normalize('NFC');
  const seen = text.replace(/\p{Default_Ignorable_Code_Point}/gu, '');
  if (seen.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase() !== 'upside stand') wrong.push(`${escape(name)} reads ${seen}`);
  if (Math.abs(wide(text) - wide(seen)) > 0.5) wrong.push(`${escape(name)}: something is seen of what should not be`);
}
return wrong;
