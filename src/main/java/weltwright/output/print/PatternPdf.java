package weltwright.output.print;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.LeatherEdge;
import weltwright.io.FileKind;
import weltwright.layout.cost.SheathCost;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.SafetyCautions;
import weltwright.output.card.BenchCard;
import weltwright.output.pdf.PdfPages;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.TextBlock;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;
import weltwright.units.PrintScale;
import weltwright.wording.AdviceWording;

/**
 * A pattern as a PDF, true to size. Each page carries a square of 50 mm to check, bars in millimetres and inches along
 * two margins, the job, and its number. The meaning of the lines stands on the first page; the job's notes and the
 * cautions on the bench card, or without one beside the pieces or on pages of their own.
 *
 * <p>For a printer that does not print true, measure a print's square, and say by {@link PrintScale} what 1 mm came out
 * as: the next print is then true on that printer.
 */
public final class PatternPdf {
    private static final Messages TEXTS = Messages.of(PatternPdf.class);

    /** What may be replaced by such a file. */
    public static final FileKind KIND = TrueSizePdf.KIND;

    static final String JOINING = TEXTS.text("pattern-pdf.a-piece-that-is-larger");

    /** So many unprintable characters are told by name. */
    private static final int MISSING_NAMED = 8;

    private PatternPdf() {}

    /**
     * Writes the PDF.
     *
     * @param plan of the same pattern: its edges are marked on the pieces, and a bench card follows
     * @throws weltwright.error.UserFacingException where the file cannot be written
     */
    public static void write(
            Pattern pattern, AssemblyPlan plan, PageHeading heading, PaperSize paper, PrintScale scale, Path file) {
        write(pattern, plan, Optional.empty(), heading, paper, scale, file);
    }

    /**
     * Writes the PDF with a line on the bench card that tells the cost.
     *
     * @param plan of the same pattern
     * @param cost of the sheath without offcuts; empty where the maker has set no prices
     * @throws weltwright.error.UserFacingException where the file cannot be written
     */
    public static void write(
            Pattern pattern,
            AssemblyPlan plan,
            Optional<SheathCost> cost,
            PageHeading heading,
            PaperSize paper,
            PrintScale scale,
            Path file) {
        TrueSizePdf.write(bytes(pattern, Optional.of(plan), cost, heading, paper, scale), file);
    }

    /** Writes the pattern alone. */
    public static void write(Pattern pattern, PageHeading heading, PaperSize paper, PrintScale scale, Path file) {
        TrueSizePdf.write(bytes(pattern, Optional.empty(), Optional.empty(), heading, paper, scale), file);
    }

    /** What of the heading cannot be printed, in a sentence for the user: a box stands for it. Empty where all can. */
    public static Optional<String> unprintable(PageHeading heading) {
        try (PDDocument document = new PDDocument()) {
            PdfTypeface typeface = PdfTypeface.in(document);
            Set<String> missing = new LinkedHashSet<>();
            for (String text : List.of(heading.customer(), heading.knifeName(), heading.notes())) {
                missing.addAll(typeface.missing(text));
            }
            return missing.isEmpty()
                    ? Optional.empty()
                    : Optional.of(missing.stream()
                            .limit(MISSING_NAMED)
                            .map(PatternPdf::named)
                            .collect(Collectors.joining(
                                    ", ",
                                    TEXTS.text("pattern-pdf.no-font-here-can-print"),
                                    missing.size() > MISSING_NAMED
                                            ? TEXTS.text("pattern-pdf.and-others-a-box-stands")
                                            : TEXTS.text("pattern-pdf.a-box-stands-in-the"))));
        } catch (IOException e) {
            throw new UncheckedIOException(e); // no file of the user's is read
        }
    }

    /** The character and its number in Unicode, for terminals lack fonts too. */
    private static String named(String cluster) {
        return cluster
                + cluster.codePoints()
                        .mapToObj(c -> String.format(Locale.ROOT, "U+%04X", c))
                        .collect(Collectors.joining(" ", " (", ")"));
    }

    /**
     * The pattern with its bench card, to look at and to print.
     *
     * @param plan of the same pattern
     * @param cost of the sheath without offcuts; empty where the maker has set no prices
     */
    public static PatternDocument document(
            Pattern pattern,
            AssemblyPlan plan,
            Optional<SheathCost> cost,
            PageHeading heading,
            PaperSize paper,
            PrintScale scale) {
        List<PlannedPage> planned = new ArrayList<>();
        byte[] pdf = bytes(pattern, Optional.of(plan), cost, heading, paper, scale, planned::addAll);
        Map<String, Integer> parts = new LinkedHashMap<>();
        planned.stream()
                .flatMap(page -> page.tile().stream())
                .forEach(tile -> parts.merge(tile.drawing().name(), 1, Integer::sum));
        return new PatternDocument(
                PdfPages.of(pdf),
                planned.size(),
                parts.entrySet().stream()
                        .map(part -> new PatternDocument.DividedPiece(part.getKey(), part.getValue()))
                        .toList());
    }

    private static byte[] bytes(
            Pattern pattern,
            Optional<AssemblyPlan> plan,
            Optional<SheathCost> cost,
            PageHeading heading,
            PaperSize paper,
            PrintScale scale) {
        return bytes(pattern, plan, cost, heading, paper, scale, pages -> {});
    }

    /** @param planned receives the pages of the pattern, without the bench card */
    private static byte[] bytes(
            Pattern pattern,
            Optional<AssemblyPlan> plan,
            Optional<SheathCost> cost,
            PageHeading heading,
            PaperSize paper,
            PrintScale scale,
            Consumer<List<PlannedPage>> planned) {
        return TrueSizePdf.bytes(heading.title(), Optional.of(heading.date()), (document, typeface) -> {
            List<PieceDrawing> pieces = pattern.pieces().stream()
                    .map(piece -> PieceDrawing.of(
                            piece,
                            plan.map(p -> p.edgesOf(piece)).orElse(List.of()),
                            PieceCaption.of(
                                    pattern,
                                    piece,
                                    heading,
                                    plan.map(AssemblyPlan::unit).orElse(MeasureUnit.MILLIMETRE)),
                            typeface))
                    .toList();
            PagePlan pagePlan = PagePlan.onPaper(paper, scale, pieces, legend(pattern, plan, typeface));
            if (pagePlan.hasTiles()) {
                TextBlock.columns(typeface, TEXTS.text("pattern-pdf.pieces-in-parts"), List.of(JOINING))
                        .forEach(pagePlan::add);
            }
            List<List<TextBlock>> cautions =
                    TextBlock.columns(typeface, TEXTS.text("pattern-pdf.take-care"), SafetyCautions.SHORT);
            if (plan.isPresent()) {
                cautions.forEach(pagePlan::addBesideOthers); // the card has them in any case
            } else {
                TextBlock.columns(typeface, TEXTS.text("pattern-pdf.this-sheath"), aboutTheSheath(pattern, heading))
                        .forEach(pagePlan::add);
                cautions.forEach(pagePlan::add);
            }
            Optional<BenchCard> card = plan.map(p -> new BenchCard(
                    typeface, pattern, p, cost, heading, paper.ofCard().frame(scale)));
            List<PlannedPage> pages = pagePlan.pages();
            planned.accept(pages);
            int inAll = pages.size() + card.map(BenchCard::pageCount).orElse(0);
            for (int i = 0; i < pages.size(); i++) {
                pages.get(i).draw(document, typeface, i + 1, inAll, heading, scale);
            }
            if (card.isPresent()) {
                card.get().draw(document, scale);
            }
        });
    }

    private static List<List<LegendBlock>> legend(Pattern pattern, Optional<AssemblyPlan> plan, PdfTypeface typeface) {
        return LegendBlock.ways(
                typeface, styles(pattern, plan.map(AssemblyPlan::edges).orElse(List.of())));
    }

    /** What a bench card says at greater length. */
    private static List<String> aboutTheSheath(Pattern pattern, PageHeading heading) {
        List<String> job = new ArrayList<>();
        job.add(heading.line());
        for (Piece piece : pattern.pieces()) {
            job.add(TEXTS.text(
                    "pattern-pdf.cut-from-leather-of-mm",
                    piece.name(),
                    piece.count(),
                    PieceDrawing.millimetres(piece.thicknessMm())));
        }
        if (!pattern.sizes().isEmpty()) {
            job.add(pattern.sizes().stream()
                    .map(size -> TEXTS.text("pattern-pdf.mm", size.name(), PieceDrawing.millimetres(size.lengthMm())))
                    .collect(Collectors.joining("; ", TEXTS.text("pattern-pdf.when-it-is-sewn"), ".")));
        }
        pattern.advice().forEach(advice -> job.add(AdviceWording.line(advice)));
        if (!heading.notes().isBlank()) {
            job.add(TEXTS.text("pattern-pdf.notes", heading.notes()));
        }
        return job;
    }

    private static List<LineStyle> styles(Pattern pattern, List<LeatherEdge> edges) {
        Set<LineStyle> used = EnumSet.of(LineStyle.CUT);
        for (Piece piece : pattern.pieces()) {
            piece.marks().forEach(mark -> used.add(LineStyle.of(mark.kind())));
            if (piece.holes().stream().anyMatch(hole -> hole.use() != Hole.Use.STITCH)) {
                used.add(LineStyle.HOLE);
            }
        }
        edges.forEach(edge -> used.add(EdgeStateLine.style(edge)));
        return List.copyOf(used);
    }
}
