import { type RawWorkbook, rawParts, zipped } from "./raw-workbook";

const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const threads = "http://schemas.microsoft.com/office/2017/10/relationships";
const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const threaded = 'xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"';

const box = (row: number, column: number) =>
  `<v:shape id="s${row}" type="#t202" fillcolor="#ffffe1"><x:ClientData ObjectType="Note"><x:Anchor>${column + 1}, 15, ${row}, 2, ${column + 3}, 15, ${row + 4}, 4</x:Anchor><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`;

/** Of the sheet "Log": a comment at B2 in runs, one at C3 without an author, a thread at B4. */
const parts: NonNullable<RawWorkbook["parts"]> = {
  "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/vmlDrawing" Target="../drawings/vmlDrawing1.vml"/><Relationship Id="rId2" Type="${office}/comments" Target="../comments1.xml"/><Relationship Id="rId3" Type="${threads}/threadedComment" Target="../threadedComments/threadedComment1.xml"/></Relationships>`,
  "xl/comments1.xml": `<comments ${main}><authors><author>Shift A</author><author/></authors><commentList><comment ref="B2" authorId="0"><text><r><rPr><b/></rPr><t>Shift A:</t></r><r><t xml:space="preserve">\n7 &amp; more, by hand</t></r></text></comment><comment ref="C3" authorId="1"><text><t>estimated</t></text></comment><comment ref="B4" authorId="0"><text><t>[Threaded comment] see a newer program</t></text></comment></commentList></comments>`,
  "xl/drawings/vmlDrawing1.vml": `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="t202"/><br>${box(1, 1)}${box(2, 2)}${box(3, 1)}</xml>`,
  "xl/threadedComments/threadedComment1.xml": `<ThreadedComments ${threaded}><threadedComment ref="B4" personId="{1}" id="{A}"><text>Is this dry?</text></threadedComment><threadedComment ref="B4" personId="{2}" id="{B}" parentId="{A}"><text>Yes.</text></threadedComment></ThreadedComments>`,
  "xl/persons/person.xml": `<personList ${threaded}><person displayName="Lab" id="{1}"/><person displayName="Shift B" id="{2}"/></personList>`,
};

const cells =
  '<sheetData><row r="2"><c r="B2"><v>7</v></c></row><row r="3"><c r="C3"><v>8</v></c></row><row r="4"><c r="B4"><v>9</v></c></row></sheetData>';

/** A file with comments, as spreadsheet programs write them. */
export function commentedFile(): Uint8Array {
  const all = rawParts({ sheets: { Log: `${cells}<legacyDrawing r:id="rId1"/>` }, parts });
  const related = "xl/_rels/workbook.xml.rels";
  const types = "[Content_Types].xml";
  const person = `<Relationship Id="rId9" Type="${threads}/person" Target="persons/person.xml"/>`;
  const vml = '<Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/><Override PartName="/xl/comments1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml"/>'; // biome-ignore format: a line
  const withIn = (path: string, end: string, more: string) =>
    String(all[path]).replace(end, more + end);
  return zipped({
    ...all,
    [related]: withIn(related, "</Relationships>", person),
    [types]: withIn(types, "</Types>", vml),
  });
}
