package weltwright.app.gui.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.lang.reflect.Proxy;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.StreamPrintServiceFactory;
import javax.print.attribute.standard.MediaPrintableArea;
import javax.print.attribute.standard.MediaSizeName;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JPanel;
import org.assertj.swing.core.BasicComponentFinder;
import org.assertj.swing.core.ComponentFinder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.testing.InMemoryPreferences;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.testing.VirtualDisplay;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.app.gui.widget.WrappedText;
import weltwright.output.PaperSize;
import weltwright.output.pdf.PdfPages;

/** Prints on printers that are not there. */
class PrintingTest {
    private static final PdfPages.PageSize A4 = new PdfPages.PageSize(210, 297);

    private final List<String> notices = new ArrayList<>();

    @BeforeEach
    void needsADisplay() {
        VirtualDisplay.assumeThere();
    }

    /** Java's own printer to PostScript: the pages have the size of the paper, in points of 1/72 in. */
    @Test
    void printsTheChosenPagesAtTheSizeOfThePaper() {
        ByteArrayOutputStream postScript = new ByteArrayOutputStream();
        PrintService stream = StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
                DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript")[0]
                .getPrintService(postScript);
        PaperModel paper = print(stream, PageChoice.PATTERN);
        MainWindowTestBase.await("the print", () -> execute(() -> !notices.isEmpty()));
        String printed = postScript.toString(StandardCharsets.ISO_8859_1);
        int pages = execute(() -> paper.document().orElseThrow().patternPages());
        assertThat(Pattern.compile("(?m)^%%Page: ").matcher(printed).results().count())
                .isEqualTo(pages);
        Matcher size = Pattern.compile("/PageSize \\[\\s*([0-9.]+) ([0-9.]+)").matcher(printed);
        assertThat(size.find()).isTrue();
        assertThat(Double.parseDouble(size.group(1)) * 25.4 / 72).isCloseTo(210, within(0.5));
        assertThat(Double.parseDouble(size.group(2)) * 25.4 / 72).isCloseTo(297, within(0.5));
        assertThat(notices.get(0)).contains("Measure the 50 mm square");
    }

    @Test
    void warnsOfPaperThatThePrinterHasNot() {
        List<PageThumbnail> pages = List.of(page(new PdfPages.PageSize(297, 420), 9), page(A4, 9));
        assertThat(PrinterFit.check(printer(4), pages))
                .containsExactly(new PrinterFit.NoPaper(new PdfPages.PageSize(297, 420)));
    }

    @Test
    void warnsOfInkBeyondThePrintersMargins() {
        assertThat(PrinterFit.check(printer(4), List.of(page(A4, 9)))).isEmpty();
        List<PrinterFit.Finding> findings = PrinterFit.check(printer(12.5f), List.of(page(A4, 12.5), page(A4, 9)));
        assertThat(findings).hasSize(1);
        PrinterFit.Cut cut = (PrinterFit.Cut) findings.get(0);
        assertThat(cut.page()).isEqualTo(1);
        assertThat(cut.lostMm()).isCloseTo(3.5, within(0.01));
    }

    /** As the manual of CUPS, "Options", names them; the other words are those of a printer without scaling. */
    @Test
    void findsTheOptionsByWhichCupsScales() {
        String usual =
                "copies=1 device-uri=ipp://bench.local/ipp finishings=3 job-hold-until=no-hold media=iso_a4_210x297mm"
                        + " number-up=1 printer-info='Bench printer' print-scaling=none scaling=100 sides=one-sided";
        assertThat(CupsDefaults.scalingIn(usual)).isEmpty();
        assertThat(CupsDefaults.scalingIn("")).isEmpty();
        for (String option : List.of(
                "fit-to-page",
                "fit-to-page=true",
                "print-scaling=fit",
                "print-scaling=auto",
                "scaling=97",
                "number-up=2")) {
            assertThat(CupsDefaults.scalingIn(usual.replace("number-up=1 ", "") + " " + option))
                    .contains(option);
        }
        assertThat(CupsDefaults.scalingIn(usual + " fit-to-page=false")).isEmpty();
    }

    /** Pages keep 9 mm free, from which the check must find the same. */
    @Test
    void findsTheInkOfThePages() {
        PaperModel paper = print(printer(4), PageChoice.ALL);
        MainWindowTestBase.await(
                "the pages", () -> execute(() -> !paper.thumbnails().isEmpty()));
        execute(() -> assertThat(paper.thumbnails()).allSatisfy(page -> {
            Rectangle2D ink = page.inkMm();
            double nearest = Math.min(
                    Math.min(ink.getMinX(), ink.getMinY()),
                    Math.min(page.size().widthMm() - ink.getMaxX(), page.size().heightMm() - ink.getMaxY()));
            assertThat(nearest).isBetween(8.0, 20.0);
        }));
    }

    @Test
    void whereThereIsNoPrinterTheFormSaysSoAndPrintsNothing() {
        Desk desk = execute(() -> desk(InstalledPrinters.NONE, PageChoice.PATTERN));
        PaperForm form = execute(() -> {
            Action none = new RunnableAction("", "", () -> {});
            return new PaperForm(
                    desk.paper(),
                    none,
                    none,
                    none,
                    new CutterForm(new CutterPreferences(new InMemoryPreferences()), none, none));
        });
        ComponentFinder finder = BasicComponentFinder.finderWithCurrentAwtHierarchy();
        WrappedText told = finder.findByName(form, "no printer", WrappedText.class);
        MainWindowTestBase.await(
                "the search",
                () -> execute(() -> desk.paper().printers().isPresent()
                        && desk.paper().document().isPresent()
                        && !desk.paper().isComputing()));
        execute(() -> {
            assertThat(told.getText()).contains("knows of no printer", "Save the PDF");
            assertThat(finder.findByName(form, "print pages", JButton.class).isEnabled())
                    .isFalse();
            desk.output().printChosenPages();
        });
        assertThat(notices).isEmpty();
    }

    /** The pages of a job, and what prints them. */
    private record Desk(PaperModel paper, OutputActions output) {}

    private PaperModel print(PrintService printer, PageChoice choice) {
        return execute(() -> {
            Desk desk = desk(new InstalledPrinters(List.of(printer), Optional.empty()), choice);
            PaperModel paper = desk.paper();
            boolean[] begun = new boolean[1];
            paper.addListener(() -> {
                if (!begun[0] && paper.printer().isPresent() && !paper.isComputing() && choice != PageChoice.ALL) {
                    begun[0] = true;
                    desk.output().printChosenPages();
                }
            });
            return paper;
        });
    }

    private Desk desk(InstalledPrinters printers, PageChoice choice) {
        JobModel model = new JobModel(OutlinedJobs.outlined());
        PrinterPreferences preferences = new PrinterPreferences(new InMemoryPreferences());
        preferences.setPaper(PaperSize.A4);
        TaskQueue tasks = new TaskQueue(notices::add);
        Optional<weltwright.sheath.pattern.Pattern> pattern =
                Optional.of(model.job().pattern());
        PaperModel paper = new PaperModel(model, () -> pattern, preferences, () -> printers, tasks);
        paper.setChoice(choice);
        paper.show();
        OutputActions output = new OutputActions(
                model,
                () -> pattern,
                paper,
                preferences,
                new CutterPreferences(new InMemoryPreferences()),
                tasks,
                new FileDialogs(new JPanel(), new InMemoryPreferences()),
                notices::add,
                (message, file) -> notices.add(message + Path.of("")));
        return new Desk(paper, output);
    }

    private static PageThumbnail page(PdfPages.PageSize size, double freeMm) {
        return new PageThumbnail(
                new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB),
                size,
                new Rectangle2D.Double(freeMm, freeMm, size.widthMm() - 2 * freeMm, size.heightMm() - 2 * freeMm));
    }

    /** A printer with A4 paper that cannot print near its edge. */
    private static PrintService printer(float marginMm) {
        MediaPrintableArea area = new MediaPrintableArea(
                marginMm, marginMm, 210 - 2 * marginMm, 297 - 2 * marginMm, MediaPrintableArea.MM);
        return (PrintService) Proxy.newProxyInstance(
                PrintingTest.class.getClassLoader(),
                new Class<?>[] {PrintService.class},
                (proxy, method, args) -> switch (method.getName()) {
                    case "getName" -> "Bench printer";
                    case "isAttributeValueSupported" -> MediaSizeName.ISO_A4.equals(args[0]);
                    case "getSupportedAttributeValues" -> new MediaPrintableArea[] {area};
                    case "equals" -> proxy == args[0];
                    case "hashCode" -> 1;
                    default -> throw new UnsupportedOperationException(method.getName());
                });
    }
}
