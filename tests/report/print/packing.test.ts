import { PDFCrossRefStream, PDFDocument } from "@cantoo/pdf-lib";
import { expect, it, vi } from "vitest";

it("the library that packs still lists its objects by what is replaced in it, one entry for each", async () => {
  const listed = vi.spyOn(Object(PDFCrossRefStream.prototype), "appendEntry");
  const document = await PDFDocument.create();
  document.addPage();
  await document.save({ useObjectStreams: true });
  const { entries } = listed.mock.contexts[0] as { readonly entries: readonly unknown[] };
  expect(entries.length).toBeGreaterThan(1);
  expect(listed).toHaveBeenCalledTimes(entries.length);
});
