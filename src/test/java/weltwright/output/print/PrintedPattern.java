package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import weltwright.knife.TestKnives;
import weltwright.output.PaperSize;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.SheathKind;
import weltwright.units.PrintScale;

/** A pattern, what it is printed on, and the printer that it is corrected for. */
record PrintedPattern(String name, Pattern pattern, PaperSize paper, PrintScale printer) {
    /** Small and large, on every paper, for printers that are true and that are not. */
    static List<PrintedPattern> all() {
        return List.of(
                new PrintedPattern("small on A4", SamplePatterns.small(), PaperSize.A4, PrintScale.TRUE),
                new PrintedPattern("large on A4", SamplePatterns.large(), PaperSize.A4, PrintScale.TRUE),
                new PrintedPattern(
                        "small on Letter, corrected",
                        SamplePatterns.small(),
                        PaperSize.LETTER,
                        new PrintScale(0.961, 0.972)),
                new PrintedPattern(
                        "large on Letter, corrected",
                        SamplePatterns.large(),
                        PaperSize.LETTER,
                        new PrintScale(1.013, 0.987)),
                new PrintedPattern("a folded sheath on A4", sewn(SheathKind.FOLDED), PaperSize.A4, PrintScale.TRUE),
                new PrintedPattern(
                        "panels on Letter, corrected",
                        sewn(SheathKind.PANELS),
                        PaperSize.LETTER,
                        new PrintScale(0.983, 0.99)),
                new PrintedPattern(
                        "large on one page", SamplePatterns.large(), PaperSize.ONE_LARGE_PAGE, PrintScale.TRUE));
    }

    /** A pattern as it is made for a knife. */
    static Pattern sewn(SheathKind kind) {
        return PatternMaker.make(TestKnives.leaf(), TestSpecs.bladeAlone(kind));
    }

    /** Its pages as they come out of the printer. */
    List<PageDrawing> read(Path folder) throws IOException {
        return PageDrawing.readAll(write(folder), printer);
    }

    /** Its file in a folder, written when it is first asked for. */
    Path write(Path folder) {
        Path file = folder.resolve(name + ".pdf");
        if (!Files.exists(file)) {
            PatternPdf.write(pattern, SamplePatterns.HEADING, paper, printer, file);
        }
        return file;
    }

    /** The one square of 50 mm that is stroked on a page. */
    static Envelope checkSquare(PageDrawing page, PrintScale fileIsFor) {
        List<Envelope> squares = page.strokes().stream()
                .filter(line -> line.points().size() == 5)
                .map(PageDrawing.Line::box)
                .filter(box -> Math.abs(box.getWidth() * fileIsFor.x() - 50) < 0.01
                        && Math.abs(box.getHeight() * fileIsFor.y() - 50) < 0.01)
                .toList();
        assertThat(squares).hasSize(1);
        return squares.get(0);
    }

    @Override
    public String toString() {
        return name;
    }
}
