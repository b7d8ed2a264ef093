/**
 * Our own drawings of foot, leg and body: the part being measured is lit, the device is shown where
 * it goes.
 */
import { Box } from '@mui/material'
import type { ReactNode } from 'react'
import type { Part, View } from '../../shared/engine/visit/measures/measure.ts'
import { outlinePaths } from './footOutlines.table.ts'
import type { MeasureHelp } from './help/topic.ts'

/** Outline of each view in a box of 260 by 220; the left side, mirrored for the right. */
const outlines: Record<View, ReactNode> = {
	top: (
		<>
			<path d={outlinePaths.top} />
			<ellipse cx="96" cy="49" rx="7" ry="9" />
			<ellipse cx="109" cy="40" rx="7.5" ry="10" />
			<ellipse cx="123" cy="34" rx="8" ry="12" />
			<ellipse cx="138" cy="29" rx="8.5" ry="13" />
			<ellipse cx="159" cy="31" rx="12" ry="19" />
		</>
	),
	side: (
		<>
			<path d={outlinePaths.side} />
			<path className="ground" d="M14 176h232" />
		</>
	),
	rear: (
		<>
			<path d={outlinePaths.rear} />
			<path className="ground" d="M40 178h180" />
		</>
	),
	lunge: (
		<>
			<path className="ground" d="M14 190h232M232 20v170" />
			<path d={outlinePaths.lunge} />
		</>
	),
	lying: (
		<>
			<path className="ground" d="M14 142h150" />
			<path d={outlinePaths.lying} />
		</>
	),
	body: (
		<>
			<circle cx="130" cy="32" r="16" />
			<path d={outlinePaths.body} />
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
