/**
 * A drawing of the engine as an element of the page, so that its words stand in our own type and
 * its inks can follow the look; a picture of its own could reach neither.
 */
import { Box, type SxProps } from '@mui/material'
import { useCallback } from 'react'

const svgSpace = 'xmlns="http://www.w3.org/2000/svg"'
const spaced = (svg: string): string =>
	/xmlns=/.test(svg) ? svg : svg.replace('<svg', `<svg ${svgSpace}`)

interface DrawingProps {
	/** from the engine, or from a kept page whose reader refused scripts in them */
	svg: string
	alternative: string
	/** how it is set, beside its own type */
	sx?: SxProps
}
export function Drawing({ svg, alternative, sx }: DrawingProps) {
	const draw = useCallback(
		(box: HTMLElement | null) => {
			if (!box) return
			const { documentElement } = new DOMParser().parseFromString(spaced(svg), 'image/svg+xml')
			if (documentElement.nodeName !== 'svg') return
			const width = documentElement.getAttribute('width')
			const height = documentElement.getAttribute('height')
			if (width && height && !documentElement.hasAttribute('viewBox'))
				documentElement.setAttribute('viewBox', `0 0 ${width} ${height}`)
			documentElement.setAttribute('aria-hidden', 'true')
			box.replaceChildren(document.importNode(documentElement, true))
		},
		[svg],
	)
	return (
		<Box
			ref={draw}
			role="img"
			aria-label={alternative}
			sx={[
				{
					'& svg': { maxWidth: '100%', height: 'auto', display: 'block' },
					'& svg text': { fontFamily: 'inherit' },
				},
				...(Array.isArray(sx) ? sx : [sx]),
			]}
		/>
	)
}
