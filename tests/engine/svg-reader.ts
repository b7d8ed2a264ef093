/** Reads a drawing back as XML. */
import { createRequire } from 'node:module'

interface XmlNode {
	name: string
	attr: Record<string, string>
	val: string
	children: XmlNode[]
}
// the very parser that draws the pictures of the PDF: it is strict and throws on what is not XML
export const { XmlDocument } = createRequire(createRequire(import.meta.url).resolve('pdfmake'))(
	'xmldoc',
) as { XmlDocument: new (text: string) => XmlNode }
/** An element and all within it. */
export const elements = (node: XmlNode): XmlNode[] => [
	node,
	...(node.children ?? []).filter((child) => child.name).flatMap(elements),
]
