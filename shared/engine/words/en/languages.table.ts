/**
 * The languages that are offered, by ISO 639 code (two letters where there are two, else three of
 * ISO 639-3): those that are spoken or signed today by enough people to be met in a clinic. Any other
 * can be written as its tag. The choice is common practice, no source.
 */
export const offeredLanguages: readonly string[] = (
	'aa ab af ak am an ar as av ay az ba be bg bi bm bn bo br bs ca ce ch co cr cs cv cy da de dv dz ' +
	'ee el en es et eu fa ff fi fj fo fr fy ga gd gl gn gu gv ha he hi ho hr ht hu hy hz id ig ii ik ' +
	'is it iu ja jv ka kg ki kj kk kl km kn ko kr ks ku kv kw ky lb lg li ln lo lt lu lv mg mh mi mk ' +
	'ml mn mr ms mt my na nb nd ne ng nl nn no nr nv ny oc oj om or os pa pl ps pt qu rm rn ro ru rw ' +
	'sc sd se sg si sk sl sm sn so sq sr ss st su sv sw ta te tg th ti tk tn to tr ts tt ty ug uk ur ' +
	'uz ve vi wa wo xh yi yo za zh zu ' +
	'ach arq ary arz ast bal bem bho ceb chk ckb crh csb din dyo efi fil fon fur gaa gil gsw hak haw ' +
	'hif hil hmn ilo jam kab kam kea kok kri ksh kum lah lez lua luo lus luy mai mas men min mni mos ' +
	'nan nap nds new niu nso nyn pag pam pap pau pcm pdc pis pon raj rar rhg rom rtm sah sat scn ' +
	'sco sdh shn snk srn srr suk swb syr tcy tem tet tig tkl tmh tpi tum tvl tyv udm umb vec war wuu ' +
	'yao yap yue zgh zza ' +
	'fa-AF zh-Hans zh-Hant pt-BR ' +
	'ase asf bfi dse fsl gsg isg nzs'
).split(' ')

/** Names that the platform does not bring: sign languages, as ISO 639-3 has them (from memory). */
export const furtherNames: Readonly<Record<string, string>> = {
	asf: 'Auslan (Australian Sign Language)',
	bfi: 'British Sign Language',
	dse: 'Dutch Sign Language',
	fsl: 'French Sign Language',
	gsg: 'German Sign Language',
	isg: 'Irish Sign Language',
	nzs: 'New Zealand Sign Language',
}
