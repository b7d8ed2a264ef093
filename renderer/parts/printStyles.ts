/**
 * A printed screen is a page: light ink, table heads repeated, no buttons, ways or fields to search
 * in.
 */
export const printStyles = {
	'@page': {
		margin: '14mm 12mm 16mm',
		'@bottom-right': {
			content: '"Page " counter(page) " of " counter(pages)',
			fontFamily: "'Noto Sans', sans-serif",
			fontSize: '8pt',
		},
	},
	'@media print': {
		'html, body': { backgroundColor: '#fff !important', color: '#000' },
		// what scrolls on screen is whole on paper
		'.MuiTableContainer-root, .MuiPaper-root, [role=region]': {
			overflow: 'visible !important',
			maxHeight: 'none !important',
		},
		'.MuiTableContainer-root, section.MuiPaper-root, [role=region].MuiPaper-root': {
			border: '0 !important',
			padding: '0 !important',
		},
		'.MuiButton-root, nav, iframe, .lw-screen-only': { display: 'none !important' },
		table: { width: '100%' },
		thead: { display: 'table-header-group' },
		tr: {
			breakInside: 'avoid',
			backgroundColor: 'transparent !important',
			boxShadow: 'none !important',
			height: 'auto !important',
		},
		'th, td': {
			paddingBlock: '3px !important',
			borderBottom: '1px solid #999 !important',
			verticalAlign: 'top',
		},
		'thead th': { borderBottom: '1.5px solid #000 !important' },
		'h1, h2, h3': { breakAfter: 'avoid' },
		a: { color: 'inherit !important', textDecoration: 'none !important' },
		'th > a:only-child, td > a:only-child': {
			minHeight: '0 !important',
			marginBlock: '0 !important',
		},
	},
} as const
