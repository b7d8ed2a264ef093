/** An address for a file of the host while it is on the page. */
import { useEffect, useState } from 'react'
import { urlOf } from './files.ts'

/**
 * An address of the bytes for a frame or a link, freed when other bytes come or the page goes.
 * @param base64 of a PDF; undefined while there is none
 * @returns empty while there is none
 */
export function useFileUrl(base64: string | undefined): string {
	const [url, setUrl] = useState('')
	useEffect(() => {
		if (base64 === undefined) return
		const made = urlOf(base64)
		setUrl(made)
		return () => {
			URL.revokeObjectURL(made)
			setUrl('')
		}
	}, [base64])
	return url
}
