/**
 * Our own drawings of foot, leg and body: the part being measured is lit, the device is shown where
 * it goes.
 */
import { Box } from '@mui/material'
import type { ReactNode } from 'react'
import type { MeasureHelp, Part, View } from './help/measures.table.ts'

/** Outline of each view in a box of 260 by 220; the left side, mirrored for the right. */
const outlines: Record<View, ReactNode> = {
	top: (
		<>
			<path d="M128 208c-20 0-30-16-29-38 1-24-5-44-10-66-6-24-5-40 6-48 10-8 28-14 46-14 22 0 33 8 34 28 1 20-8 40-12 62-3 18-2 30-3 42-2 22-14 34-32 34Z" />
			<ellipse cx="96" cy="49" rx="7" ry="9" />
			<ellipse cx="109" cy="40" rx="7.5" ry="10" />
			<ellipse cx="123" cy="34" rx="8" ry="12" />
			<ellipse cx="138" cy="29" rx="8.5" ry="13" />
			<ellipse cx="159" cy="31" rx="12" ry="19" />
		</>
	),
	side: (
		<>
			<path d="M64 16c2 40 2 62-4 84-8 22-20 32-20 52 0 18 12 22 26 22 26 0 36-10 54-8 24 2 34 8 60 8h40c12 0 16-8 12-16-6-12-26-14-44-18-30-8-50-26-58-46-6-18-8-44-8-78" />
			<path className="ground" d="M14 176h232" />
		</>
	),
	rear: (
		<>
			<path d="M92 12c6 40 16 62 16 92 0 18-10 30-10 52 0 14 12 20 32 20s32-6 32-20c0-22-10-34-10-52 0-30 10-52 16-92" />
			<path className="ground" d="M40 178h180" />
		</>
	),
	lunge: (
		<>
			<path className="ground" d="M14 190h232M232 20v170" />
			<path d="M90 186c-14 0-18-12-10-22l26-16 8-26 84-74 30-18M130 150c20 12 46 14 66 26 8 6 6 10-4 10H90M130 150l8-16 82-64 12-24" />
		</>
	),
	lying: (
		<>
			<path className="ground" d="M14 142h150" />
			<path d="M14 106c40-10 90-8 146-6 14 0 22 4 26 12M14 140c50-2 90-4 140-6M186 112c10 6 12 18 8 28l-8 60c-2 10-14 10-16 0l-4-54c-6-4-10-8-12-12" />
		</>
	),
	body: (
		<>
			<circle cx="130" cy="32" r="16" />
			<path d="M130 48v14M104 66c10-6 42-6 52 0l4 60M104 66l-4 60M112 118l-4 78h16l6-60 6 60h16l-4-78M110 68l2 52h36l2-52" />
			<path className="ground" d="M40 198h180" />
		</>
	),
}
const arrow = (d: string) => (
	<path className="lit" markerStart="url(#lw-tip)" markerEnd="url(#lw-tip)" d={d} />
)
const lit: Record<Part, ReactNode> = {
	length: (
		<>
			<path className="device" d="M92 214h72M140 10h40" />
			<path className="thin" d="M196 208v-196" />
			{arrow('M196 206V14')}
		</>
	),
	'ball-length': (
		<>
			<path className="device" d="M92 214h72M176 70h26" />
			<circle className="spot" cx="170" cy="72" r="8" />
			{arrow('M208 206V72')}
		</>
	),
	width: (
		<>
			<path className="device" d="M80 60v52M180 48v52" />
			{arrow('M84 92L176 72')}
		</>
	),
	girth: <path className="lit tape" d="M88 96c26 14 62 4 88-20M88 92c20-14 62-24 88-20" />,
	'heel-width': (
		<>
			<path className="device" d="M92 156v40M166 156v40" />
			{arrow('M98 178H158')}
		</>
	),
	'toe-depth': (
		<>
			<path className="device" d="M196 140h44" />
			{arrow('M216 142v34')}
		</>
	),
	instep: (
		<>
			<path className="device" d="M122 106h50" />
			{arrow('M146 108v68')}
		</>
	),
	navicular: (
		<>
			<circle className="spot" cx="112" cy="132" r="8" />
			{arrow('M112 140v36')}
		</>
	),
	'big-toe': (
		<>
			<path className="device" d="M150 160l50 4M200 164l34-34" />
			<path className="lit" d="M226 164a28 28 0 0 0-8-20" />
			<circle className="spot" cx="200" cy="164" r="6" />
		</>
	),
	'big-toe-standing': (
		<>
			<path className="device" d="M200 172l40-20" />
			<path className="lit" d="M236 172a36 36 0 0 0-4-16" />
			<circle className="spot" cx="200" cy="168" r="6" />
		</>
	),
	'first-ray': (
		<>
			{arrow('M196 130v42')}
			<circle className="spot" cx="196" cy="162" r="7" />
		</>
	),
	'heel-rise': (
		<>
			{arrow('M30 172v-52')}
			<circle className="spot" cx="50" cy="160" r="8" />
		</>
	),
	'heel-tilt': (
		<>
			<path className="lit" d="M130 30v148" />
			<path className="device" d="M130 110l-8 66" />
		</>
	),
	forefoot: <path className="lit" d="M86 176l88-10" />,
	'push-up': (
		<>
			{arrow('M112 176v-44')}
			<circle className="spot" cx="112" cy="128" r="6" />
		</>
	),
	wall: (
		<>
			<path className="device" d="M192 200h40" />
			{arrow('M196 200h34')}
		</>
	),
	shin: (
		<>
			<path className="device" d="M150 112l28-24 8 10-28 24Z" />
			<path className="thin" d="M112 130V30" />
			<path className="lit" d="M112 60a72 72 0 0 1 48 28" />
		</>
	),
	straight: <path className="lit" d="M150 120a40 40 0 0 0 32 50" />,
	bent: <path className="lit" d="M150 120a40 40 0 0 0 32 50M60 92c10-30 20-50 26-80" />,
	end: (
		<>
			<circle className="spot" cx="96" cy="150" r="8" />
			<circle className="spot" cx="134" cy="150" r="8" />
		</>
	),
	stature: (
		<>
			<path className="device" d="M104 14h70" />
			{arrow('M186 16v180')}
		</>
	),
	sitting: (
		<>
			<path className="device" d="M104 14h70M96 122h68" />
			{arrow('M186 16v104')}
		</>
	),
	mass: <path className="device" d="M92 200h76v10H92Z" />,
	legs: (
		<>
			<path className="lit" d="M100 116h60" />
			<path className="device" d="M102 196h22v8h-22Z" />
		</>
	),
}
const pictureWords = (help: MeasureHelp, side?: string): string =>
	`Drawing: ${help.title.toLowerCase()}${side ? `, ${side}` : ''}. ${help.position}`

export function FootPicture({
	help,
	side,
	height = 200,
}: {
	help: MeasureHelp
	side?: 'left' | 'right' | undefined
	height?: number
}) {
	return (
		<Box
			component="svg"
			role="img"
			aria-label={pictureWords(help, side)}
			viewBox="0 0 260 220"
			sx={{
				display: 'block',
				width: '100%',
				height,
				fill: 'none',
				stroke: 'currentColor',
				strokeWidth: 2,
				strokeLinejoin: 'round',
				strokeLinecap: 'round',
				'& .ground': { strokeWidth: 3, opacity: 0.45 },
				'& .thin': { strokeWidth: 1, strokeDasharray: '4 4' },
				'& .lit': { stroke: 'var(--lw-focus)', strokeWidth: 4 },
				'& .tape': { strokeWidth: 6 },
				'& .device': {
					stroke: 'primary.main',
					color: 'primary.main',
					strokeWidth: 7,
					strokeOpacity: 0.7,
				},
				'& .spot': { fill: 'var(--lw-focus)', stroke: 'none' },
			}}
		>
			<defs>
				<marker
					id="lw-tip"
					viewBox="0 0 10 10"
					refX="8"
					refY="5"
					markerWidth="4"
					markerHeight="4"
					orient="auto-start-reverse"
				>
					<path d="M0 0 10 5 0 10z" fill="var(--lw-focus)" stroke="none" />
				</marker>
			</defs>
			{/* the left foot is drawn; the right one is its mirror image */}
			<g transform={side === 'right' ? 'translate(260 0) scale(-1 1)' : undefined}>
				{outlines[help.view]}
				{lit[help.part]}
			</g>
		</Box>
	)
}
