/** Files that the host sends as text or base64: shown in a frame, or handed to the person. */
const bytesOf = (base64: string) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
/** An address of the bytes for a frame or a link; whoever asks for it revokes it. */
export const urlOf = (base64: string, type = 'application/pdf'): string =>
	URL.createObjectURL(new Blob([bytesOf(base64)], { type }))
function handOver(url: string, fileName: string): void {
	const link = Object.assign(document.createElement('a'), { href: url, download: fileName })
	link.click()
	// the download has begun once the click returned; the address is freed a little later
	setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
export const saveBytes = (base64: string, fileName: string, type?: string): void =>
	handOver(urlOf(base64, type), fileName)
export const saveText = (text: string, fileName: string, type: string): void =>
	handOver(URL.createObjectURL(new Blob([text], { type })), fileName)
