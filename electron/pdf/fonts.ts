/** The one place that knows the fonts: Noto Sans, embedded in every PDF. */
import { fileURLToPath } from 'node:url'

const file = (name: string) =>
	fileURLToPath(import.meta.resolve(`@expo-google-fonts/noto-sans/${name}/NotoSans_${name}.ttf`))
/** The files by the style that pdfmake asks for. */
export const fontFiles = {
	normal: file('400Regular'),
	bold: file('700Bold'),
	italics: file('400Regular_Italic'),
	bolditalics: file('700Bold_Italic'),
}
