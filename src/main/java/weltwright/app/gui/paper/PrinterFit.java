package weltwright.app.gui.paper;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.attribute.Attribute;
import javax.print.attribute.HashPrintRequestAttributeSet;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.standard.MediaPrintableArea;
import javax.print.attribute.standard.MediaSize;
import javax.print.attribute.standard.MediaSizeName;
import weltwright.output.pdf.PdfPages;

/**
 * Finds why a printer would not print pages as they are: it has no paper of their size, so that its driver would shrink
 * or cut them, they have ink where it cannot print, or its driver is set to scale. What a driver does beyond that is
 * not told to programs, so the printed square is measured in any case.
 */
final class PrinterFit {
    /** Papers that differ by less are one size. ISO 216 allows 2 mm on sides from 150 to 600 mm. */
    private static final double SIZE_TOLERANCE_MM = 2;

    /** Ink is known to half a mm. */
    private static final double INK_TOLERANCE_MM = 0.5;

    private static final DocFlavor FLAVOR = DocFlavor.SERVICE_FORMATTED.PAGEABLE;

    private PrinterFit() {}

    /** A finding about the pages of a print. */
    sealed interface Finding {}

    /** The printer has no paper of this size. */
    record NoPaper(PdfPages.PageSize size) implements Finding {}

    /**
     * Ink lies where the printer cannot print.
     *
     * @param page index of the page where most of it is lost
     * @param lostMm width of the strip that is lost there
     */
    record Cut(int page, double lostMm) implements Finding {}

    /** The printer's driver scales every page, by this option. */
    record Scaled(String option) implements Finding {}

    /** Returns the name of a paper's size; empty where it has none. */
    static Optional<MediaSizeName> paper(PdfPages.PageSize size) {
        MediaSizeName nearest = MediaSize.findMedia(
                (float) Math.min(size.widthMm(), size.heightMm()),
                (float) Math.max(size.widthMm(), size.heightMm()),
                MediaSize.MM);
        return Optional.ofNullable(nearest).filter(name -> {
            MediaSize found = MediaSize.getMediaSizeForName(name);
            return Math.abs(found.getX(MediaSize.MM) - Math.min(size.widthMm(), size.heightMm())) < SIZE_TOLERANCE_MM
                    && Math.abs(found.getY(MediaSize.MM) - Math.max(size.widthMm(), size.heightMm()))
                            < SIZE_TOLERANCE_MM;
        });
    }

    /** Asks the printer; may take seconds. */
    static List<Finding> check(PrintService printer, List<PageThumbnail> pages) {
        Set<Finding> missing = new LinkedHashSet<>();
        List<Cut> cut = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            PageThumbnail page = pages.get(i);
            Optional<MediaSizeName> paper =
                    paper(page.size()).filter(name -> printer.isAttributeValueSupported(name, FLAVOR, null));
            if (paper.isEmpty()) {
                missing.add(new NoPaper(page.size()));
                continue;
            }
            double lost = printable(printer, paper.get())
                    .map(area -> lostMm(page.inkMm(), area))
                    .orElse(0.0);
            if (lost > INK_TOLERANCE_MM) {
                cut.add(new Cut(i, lost));
            }
        }
        List<Finding> findings = new ArrayList<>(missing);
        CupsDefaults.scalingOf(printer.getName()).ifPresent(option -> findings.add(new Scaled(option)));
        cut.stream().max(Comparator.comparingDouble(Cut::lostMm)).ifPresent(findings::add);
        return findings;
    }

    /** Returns the largest area that the printer can print on a paper, in mm from its upper left corner. */
    private static Optional<Rectangle2D> printable(PrintService printer, MediaSizeName paper) {
        PrintRequestAttributeSet attributes = new HashPrintRequestAttributeSet(paper);
        Object areas = printer.getSupportedAttributeValues(
                (Class<? extends Attribute>) MediaPrintableArea.class, FLAVOR, attributes);
        return areas instanceof MediaPrintableArea[] all
                ? Arrays.stream(all)
                        .map(PrinterFit::rectangle)
                        .max(Comparator.comparingDouble(area -> area.getWidth() * area.getHeight()))
                : Optional.empty();
    }

    private static Rectangle2D rectangle(MediaPrintableArea area) {
        float[] xywh = area.getPrintableArea(MediaPrintableArea.MM);
        return new Rectangle2D.Float(xywh[0], xywh[1], xywh[2], xywh[3]);
    }

    private static double lostMm(Rectangle2D ink, Rectangle2D printable) {
        if (ink.isEmpty()) {
            return 0;
        }
        return Math.max(
                Math.max(printable.getMinX() - ink.getMinX(), ink.getMaxX() - printable.getMaxX()),
                Math.max(printable.getMinY() - ink.getMinY(), ink.getMaxY() - printable.getMaxY()));
    }
}
