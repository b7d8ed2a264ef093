/** The page of the address, in an open workstation. */
import { Typography } from '@mui/material'
import { type ReactNode, Suspense } from 'react'
import { Route, Switch } from 'wouter'
import { type Page, pages, type Surroundings } from '../routes.tsx'
import { RecordsWays } from '../screens/records/Ways.tsx'

/** @param what is fetched meanwhile: 'the player' */
export const Opening = ({ what, children }: { what: string; children: ReactNode }) => (
	<Suspense fallback={<Typography role="status">{`Opening ${what}.`}</Typography>}>
		{children}
	</Suspense>
)
type Parts = Parameters<Page['show']>[0]

function Shown({ page, parts, around }: { page: Page; parts: Parts; around: Surroundings }) {
	return (
		<>
			<Opening what={page.opening}>{page.show(parts, around)}</Opening>
			{page.recordsBelow && (
				<RecordsWays playerId={parts.id && parts.id !== 'new' ? parts.id : undefined} />
			)}
		</>
	)
}
export function Pages({ demo, around }: { demo: boolean; around: Surroundings }) {
	return (
		<Switch>
			{pages
				.filter((page) => demo || !page.demoOnly)
				.map((page) => (
					<Route key={page.path} path={page.path}>
						{(parts) => <Shown page={page} parts={parts} around={around} />}
					</Route>
				))}
		</Switch>
	)
}
