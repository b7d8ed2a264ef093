/** A player's name: as it is shown, and as it is printed. */
interface Named {
	givenName: string
	familyName: string
}
/** What pages need of a player's details to name the player. */
interface NamedOnPaper extends Named {
	latinName?: Named | undefined
}
/** Given name, then family name, as the player writes it: what the screens show. */
export const fullName = ({ givenName, familyName }: Named): string => `${givenName} ${familyName}`
/** The name as every document has it: in Latin letters where they were given. */
export const paperName = (player: NamedOnPaper): Named => player.latinName ?? player
/** The same in a row. */
export const fullPaperName = (player: NamedOnPaper): string => fullName(paperName(player))
/** A guardian's name as every document has it. */
export const guardianPaperName = ({
	name,
	latinName,
}: {
	name: string
	latinName?: string | undefined
}): string => latinName ?? name
