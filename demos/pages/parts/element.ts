// Elements of a page in one line each.

type Child = Node | string;

/** An element with attributes (those that are undefined are left out) and children. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string | number | undefined>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes))
    if (value !== undefined) made.setAttribute(name, String(value));
  made.append(...children);
  return made;
}

let count = 0;
/** An id that no other element of the page has. */
export const newId = (stem: string): string => `${stem}-${++count}`;
