/** Tags of an XML text that close nothing or are never closed; none when it is well-formed so far. */
export function brokenTags(xml: string): string[] {
  const open: string[] = [];
  const broken: string[] = [];
  for (const [tag, closing, name, self] of xml.matchAll(
    /<(\/?)([a-zA-Z][\w:-]*)(?:"[^"]*"|[^">])*?(\/?)>/g,
  )) {
    if (self === "/") continue;
    if (closing !== "/") open.push(name!);
    else if (open.pop() !== name) broken.push(tag);
  }
  return [...broken, ...open];
}
