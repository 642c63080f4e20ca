package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.sheath.pattern.Piece;
import weltwright.units.PrintScale;

/** What the pages of a pattern say in words. */
class PrintedTextTest {
    @TempDir
    static Path folder;

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void everyPageSaysWhatItIsAndHowToPrintIt(PrintedPattern print) throws IOException {
        List<String> pages = words(print.write(folder));
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i))
                    .contains("50 mm each way")
                    .contains("Print at 100 %")
                    .contains("Page " + (i + 1) + " of " + pages.size())
                    .contains("Ylva Bräntholm")
                    .contains("Drop point, 105 mm")
                    .contains("2024-03-09");
        }
        String all = String.join("\n", pages);
        assertThat(all)
                .contains("What the lines mean")
                .contains("Take care")
                .contains("Tape the blade")
                .contains("over a soft surface")
                .contains("law on carrying knives")
                .contains("Likes a dark brown edge");
        for (Piece piece : print.pattern().pieces()) {
            assertThat(all)
                    .contains("%s: cut %d from leather of %s mm"
                            .formatted(piece.name(), piece.count(), PieceDrawing.millimetres(piece.thicknessMm())));
        }
        if (!print.printer().equals(PrintScale.TRUE)) {
            assertThat(pages).allSatisfy(page -> assertThat(page).contains("Corrected for a printer"));
        }
    }

    @Test
    void aPartOfALargePieceTellsItsPlace() throws IOException {
        List<String> pages = words(PrintedPattern.all().get(1).write(folder));
        assertThat(String.join("\n", pages))
                .contains("body (cut 1): page A1")
                .contains("body (cut 1): page A2")
                .contains("body (cut 1): page B1")
                .contains("body (cut 1): page B2");
    }

    /** People paste whole letters into a field for notes. */
    @Test
    void longNotesAndNamesArePrintedOverAsManyPagesAsTheyTake() throws IOException {
        String notes = IntStream.range(0, 3000).mapToObj(i -> "word" + i).collect(Collectors.joining(" "));
        PageHeading heading =
                new PageHeading("A name that is long ".repeat(20), "x".repeat(500), LocalDate.of(2024, 3, 9), notes);
        Path file = folder.resolve("long.pdf");
        PatternPdf.write(SamplePatterns.small(), heading, PaperSize.LETTER, new PrintScale(0.9, 0.9), file);
        assertThat(String.join(" ", words(file)))
                .contains("word0 ")
                .contains("word1500 ")
                .contains("word2999");
    }

    /**
     * Letters that the typeface lacks are drawn, so a reader of words finds them only where the file says them besides.
     */
    @Test
    void namesInAnyScriptArePrinted() throws IOException {
        PageHeading heading = new PageHeading(
                "Łukasz Žižka Ωμέγα Юрий 李", "\uD83D\uDD2A\u0007", LocalDate.of(2024, 3, 9), "a\tb\n\nc");
        Path file = folder.resolve("scripts.pdf");
        PatternPdf.write(SamplePatterns.small(), heading, PaperSize.A4, PrintScale.TRUE, file);
        assertThat(words(file).get(0)).contains("Łukasz Žižka Ωμέγα Юрий").doesNotContain("?");
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
            extractor.processPage(document.getPage(0));
            assertThat(extractor.getMarkedContents())
                    .extracting(PDMarkedContent::getActualText)
                    .contains("李", "\uD83D\uDD2A");
        }
        assertThat(PatternPdf.unprintable(heading)).isEmpty();
        assertThat(PatternPdf.unprintable(new PageHeading("\uD808\uDC00", "", heading.date(), ""))
                        .orElseThrow())
                .contains("U+12000");
    }

    private static List<String> words(Path file) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                // Lines are broken to fit; words are looked for across the breaks.
                pages.add(stripper.getText(document).replaceAll("[\\s\\u00a0]+", " "));
            }
        }
        return pages;
    }
}
