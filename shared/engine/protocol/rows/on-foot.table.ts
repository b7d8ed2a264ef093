import { row } from '../row.ts'

const scale = 'Mills, Blanch and Vicenzino 2010, Med Sci Sports Exerc 42:1966, abstract'

export const onFootRows = {
	'onfoot.comfortChangeLeast': row(1, '/10; from here a change of comfort counts', 'joggers in their own shoes, 20', `${scale}: 10.2 mm of a visual scale of 100 mm, read here as 1 of 10; a scale of whole numbers is common practice`, 'cross-sectional', 'derived'),
	'onfoot.comfortSessions': row(2, 'sessions after which comfort is asked again', 'joggers in their own shoes, 20', `${scale}: two sessions until ratings were steady, longer for the heel`, 'cross-sectional', 'read'),
	'onfoot.roomsDifferMm': row(4, 'mm between the room seen standing and the room by inside length; from here both are measured again', 'all players', 'own choice, no source (what a foot measured again may differ by)', 'practice', 'choice'),
} as const
