package weltwright.app.cli;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import javax.imageio.ImageIO;
import javax.swing.JLabel;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import weltwright.assembly.AssemblyPlan;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.print.PatternPdf;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.PrintScale;

/**
 * The first page of the pattern for every kind of sheath, three tilts and both hands, side by side in one picture for
 * each sample photo, and for knives with a guard that goes into the sheath: to be run by hand, and looked through
 * before a change to the patterns is done with.
 *
 * <p>Writes {@code target/contact-sheet-SAMPLE.png}. What is refused stands there with its message.
 */
public final class ContactSheet {
    private static final List<String> SAMPLES = List.of("drop-point", "leaf-blade");
    private static final double[] TILTS_DEGREES = {-15, 0, 15};
    private static final int DPI = 60;
    private static final int CAPTION_PX = 22;
    private static final int GAP_PX = 8;

    private ContactSheet() {}

    public static void main(String[] args) throws IOException {
        Path folder = Files.createTempDirectory(Files.createDirectories(Path.of("target")), "contact-sheet");
        for (String sample : SAMPLES) {
            CommandLineRun.of("make", "@sample-images/" + sample + ".args", "-o", folder)
                    .succeeds();
            Job job = JobFile.read(folder.resolve(sample + JobFile.EXTENSION));
            PageHeading heading = new PageHeading(job.customer(), job.knifeName(), job.begun(), "");
            write(sample, heading, job.spec(), spec -> job.withSpec(spec).pattern(), folder.resolve("page.pdf"));
        }
        SheathSpec opened = SheathSpec.standard(SheathKind.FOLDED)
                .withDepth(InsertionDepth.BY_THE_KNIFE.withGuard(GuardOpening.OPEN_SIDE))
                .withStrap(Optional.of(HandleStrap.USUAL));
        for (String name : List.of("guard", "finger guard")) {
            Knife knife = TestKnives.shapes().get(name);
            PageHeading heading = new PageHeading("", name, LocalDate.of(2024, 5, 6), "");
            write(
                    name.replace(' ', '-'),
                    heading,
                    opened,
                    spec -> PatternMaker.make(knife, spec),
                    folder.resolve("page.pdf"));
        }
    }

    private static void write(
            String name, PageHeading heading, SheathSpec usual, Function<SheathSpec, Pattern> maker, Path pdf)
            throws IOException {
        List<List<Page>> rows = new ArrayList<>();
        for (SheathKind kind : SheathKind.values()) {
            List<Page> row = new ArrayList<>();
            for (DrawHand hand : DrawHand.values()) {
                for (double tilt : TILTS_DEGREES) {
                    CarryPosition carry = new CarryPosition(hand, usual.carry().edge(), Math.toRadians(tilt));
                    row.add(page(heading, usual.withKind(kind).withCarry(carry), maker, pdf));
                }
            }
            rows.add(row);
        }
        Path picture = Path.of("target", "contact-sheet-" + name + ".png");
        ImageIO.write(sheet(rows), "png", picture.toFile());
        System.out.println("Written: " + picture);
    }

    private record Page(String caption, BufferedImage picture) {}

    private static Page page(PageHeading heading, SheathSpec spec, Function<SheathSpec, Pattern> maker, Path pdf)
            throws IOException {
        String caption = String.format(
                        Locale.ROOT,
                        "%s, %s hand, tilt %.0f°",
                        spec.kind(),
                        spec.carry().hand(),
                        Math.toDegrees(spec.carry().tiltRad()))
                .toLowerCase(Locale.ROOT);
        try {
            Pattern pattern = maker.apply(spec);
            PatternPdf.write(pattern, AssemblyPlan.of(pattern), heading, PaperSize.A4, PrintScale.TRUE, pdf);
        } catch (UserFacingException refused) {
            return new Page(caption, refusal(refused.getMessage()));
        }
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new Page(
                    caption + ", page 1 of " + document.getNumberOfPages(),
                    new PDFRenderer(document).renderImageWithDPI(0, DPI));
        }
    }

    /** Draws the reason why there is no page, in lines of 300 pixels. */
    private static BufferedImage refusal(String reason) {
        JLabel label = new JLabel("<html><div style='width: 300px'>" + reason + "</div></html>");
        label.setOpaque(true);
        label.setSize(label.getPreferredSize());
        BufferedImage picture = new BufferedImage(label.getWidth(), label.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = picture.createGraphics();
        label.paint(graphics);
        graphics.dispose();
        return picture;
    }

    private static BufferedImage sheet(List<List<Page>> rows) {
        int wide = rows.stream()
                .flatMap(List::stream)
                .mapToInt(page -> page.picture().getWidth())
                .max()
                .orElseThrow();
        int high = rows.stream()
                .flatMap(List::stream)
                .mapToInt(page -> page.picture().getHeight())
                .max()
                .orElseThrow();
        int columns = rows.stream().mapToInt(List::size).max().orElseThrow();
        BufferedImage sheet = new BufferedImage(
                columns * (wide + GAP_PX), rows.size() * (high + CAPTION_PX + GAP_PX), BufferedImage.TYPE_INT_RGB);
        Graphics2D ink = sheet.createGraphics();
        ink.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        ink.setColor(Color.LIGHT_GRAY);
        ink.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
        ink.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 14));
        ink.setColor(Color.BLACK);
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < rows.get(row).size(); column++) {
                Page page = rows.get(row).get(column);
                int left = column * (wide + GAP_PX);
                int top = row * (high + CAPTION_PX + GAP_PX);
                ink.drawString(page.caption(), left + 4, top + CAPTION_PX - 6);
                ink.drawImage(page.picture(), left, top + CAPTION_PX, null);
            }
        }
        ink.dispose();
        return sheet;
    }
}
