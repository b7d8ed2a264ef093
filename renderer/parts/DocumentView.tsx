/**
 * A document as elements: the same description that the PDF and the accessible page are made of.
 */
import { Box } from '@mui/material'
import { Fragment, type ReactNode, useMemo } from 'react'
import {
	type Block,
	type BlockOf,
	type ChartEntry,
	cellTexts,
	endOfPageOne,
	entriesOf,
	type LwDocument,
	type Tone,
} from '../../shared/engine/report/document.ts'
import { patternCss } from '../../shared/engine/report/html/style.ts'
import { logoUrl } from '../../shared/engine/report/logo.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { Drawing } from './Drawing.tsx'
import { paper } from './documentPaper.ts'

/** The words of a row or an item do not change places while it is shown: its place is its name. */
const named = <T,>(list: readonly T[]): { key: string; item: T }[] =>
	list.map((item, at) => ({ key: `${at}`, item }))

function Table({
	caption,
	head,
	rows,
	align = [],
}: {
	caption: string
	head: readonly string[]
	rows: readonly (readonly ReactNode[])[]
	align?: BlockOf<'table'>['align']
}) {
	return (
		<table>
			<caption>{caption}</caption>
			<thead>
				<tr>
					{named(head).map(({ key, item }, column) =>
						item ? (
							<th key={key} scope="col" className={classOfColumn(align, column)}>
								{item}
							</th>
						) : (
							<td key={key} />
						),
					)}
				</tr>
			</thead>
			<tbody>
				{named(rows).map(({ key, item: [first, ...rest] }) => (
					<tr key={key}>
						<th scope="row">{first}</th>
						{named(rest).map((cell, column) => (
							<td key={cell.key} className={classOfColumn(align, column + 1)}>
								{cell.item}
							</td>
						))}
					</tr>
				))}
			</tbody>
		</table>
	)
}
const classOfColumn = (align: readonly string[], column: number) =>
	align[column] === 'right' ? 'number' : undefined
const classOf: Record<Tone, string | undefined> = {
	body: undefined,
	small: 'small',
	strong: undefined,
	lead: undefined,
	headline: 'headline',
}
function Facts({ title, boxed, rows }: BlockOf<'facts'>) {
	return (
		<div className={boxed ? 'boxed' : undefined}>
			{title === undefined ? null : <h4>{title}</h4>}
			<dl className="facts">
				{named(rows).map(({ key, item }) => (
					<Fragment key={key}>
						<dt>{item.label}</dt>
						<dd>{item.text}</dd>
					</Fragment>
				))}
			</dl>
		</div>
	)
}
function Heading({ text, level, newPage, notOnPageOne }: BlockOf<'heading'>) {
	if (newPage || notOnPageOne) return <h3>{text}</h3>
	return level === 2 ? <h5>{text}</h5> : <h4>{text}</h4>
}
function Alert({ title, text, large }: BlockOf<'alert'>) {
	return (
		<div className="alert">
			<p className={large ? 'large' : undefined}>
				<strong>{title}</strong>
			</p>
			{text === '' ? null : <p>{text}</p>}
		</div>
	)
}
function Signature({ name, registration, date }: BlockOf<'signature'>) {
	return (
		<p>
			<strong>{name}</strong>
			<br />
			{registration}
			<br />
			{date}
		</p>
	)
}
function Beside({ left, right }: BlockOf<'beside'>) {
	return (
		<div className="beside">
			{named([left, right]).map((run) => (
				<div key={run.key}>
					{named(run.item).map(({ key, item }) => (
						<BlockView key={key} block={item} />
					))}
				</div>
			))}
		</div>
	)
}
function BlockView({ block }: { block: Block }) {
	switch (block.kind) {
		case 'heading':
			return <Heading {...block} />
		case 'text':
			return (
				<p className={classOf[block.tone ?? 'body']}>
					{block.tone === 'strong' || block.tone === 'lead' ? (
						<strong>{block.text}</strong>
					) : (
						block.text
					)}
				</p>
			)
		case 'list': {
			const items = named(block.items).map(({ key, item }) => <li key={key}>{item}</li>)
			return block.ordered ? <ol>{items}</ol> : <ul>{items}</ul>
		}
		case 'actions':
			return (
				<ol>
					{named(block.items).map(({ key, item }) => (
						<li key={key}>
							<strong>{item.what}</strong> {[item.when, item.who].filter(Boolean).join(', ')}
						</li>
					))}
				</ol>
			)
		case 'alert':
			return <Alert {...block} />
		case 'facts':
			return <Facts {...block} />
		case 'table':
			return (
				<Table
					caption={block.caption}
					head={block.head}
					rows={block.rows.map((row) => block.head.map((_, at) => row[at] ?? ''))}
					align={block.align}
				/>
			)
		case 'chart':
			return (
				<Table
					caption={block.caption}
					head={block.head}
					rows={block.rows.map((row) =>
						row.map((cell) =>
							entriesOf(cell).map((entry) => (
								<ChartEntryView key={cellTexts(entry).join(' ')} entry={entry} />
							)),
						),
					)}
				/>
			)
		case 'figure':
		case 'true-size':
			return (
				<figure>
					<Drawing svg={block.svg} alternative={block.alternative} />
					<figcaption>{block.caption}</figcaption>
				</figure>
			)
		case 'signature':
			return <Signature {...block} />
		case 'beside':
			return <Beside {...block} />
	}
}
/** Clinic, title and whom it is about, over the blocks. */
function Head({ document }: { document: LwDocument }) {
	const t = speakFrom()
	const { clinicName, address, logo } = document.letterhead
	const mark = useMemo(() => logoUrl(logo), [logo])
	return (
		<>
			<p className="clinic">
				{mark ? <img src={mark} alt="" width={28} height={28} /> : null}
				<strong>{clinicName}</strong> <span className="small">{address.join(', ')}</span>
			</p>
			<h3>{document.title}</h3>
			{document.draft && !document.slim ? (
				<p>
					<strong>{t('page.draftMark')}</strong>
				</p>
			) : null}
			<dl className={document.slim ? 'inline' : undefined}>
				{document.subject.map(([label, value]) =>
					document.slim ? (
						<div key={label}>
							<dt>{label}</dt>
							<dd>{value}</dd>
						</div>
					) : (
						<Fragment key={label}>
							<dt>{label}</dt>
							<dd>{value}</dd>
						</Fragment>
					),
				)}
			</dl>
		</>
	)
}
/** From the end of page one on; nothing of a document of one page. */
const followingOf = ({ blocks }: LwDocument): Block[] => {
	const at = endOfPageOne(blocks)
	return at < 0 ? [] : blocks.slice(at)
}
interface DocumentViewProps {
	document: LwDocument
	/** Only the pages after the first. */
	following?: boolean
}
export function DocumentView({ document, following = false }: DocumentViewProps) {
	const t = speakFrom()
	const { colour } = document.letterhead
	const blocks = following ? followingOf(document) : document.blocks
	return (
		<Box component="article" lang={document.language} sx={{ ...paper, '--report-colour': colour }}>
			{following ? null : <Head document={document} />}
			{named(blocks).map(({ key, item }) => (
				<BlockView key={key} block={item} />
			))}
			{document.notes.length > 0 ? (
				<>
					<h4>{t('page.notes')}</h4>
					<Box component={document.notesApart ? 'ul' : 'ol'} className="small">
						{named(document.notes).map(({ key, item }) => (
							<li key={key}>{item}</li>
						))}
					</Box>
				</>
			) : null}
			<p className="small">{document.footer}</p>
		</Box>
	)
}

/** What is worn in one session of the wall chart. */
function ChartEntryView({ entry }: { entry: ChartEntry }) {
	const { text, after, beside, below, pattern } = entry
	return (
		<span
			style={pattern ? { display: 'block', background: patternCss[pattern] } : { display: 'block' }}
		>
			<strong>{[text, after].filter(Boolean).join(' ')}</strong> {beside} {below}
		</span>
	)
}
