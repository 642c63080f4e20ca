package weltwright.output.card;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.HardwareRequirement;
import weltwright.assembly.LeatherEdge;
import weltwright.assembly.Operation;
import weltwright.assembly.OperationKind;
import weltwright.assembly.OperationTime;
import weltwright.assembly.SaddleStitch;
import weltwright.assembly.SeamTools;
import weltwright.assembly.WorkPhase;
import weltwright.geometry.Point;
import weltwright.layout.cost.SheathCost;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.PageHeading;
import weltwright.output.SafetyCautions;
import weltwright.output.card.CardRow.Column;
import weltwright.output.card.CardRow.Kind;
import weltwright.output.pdf.BlankBlock;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.SideBySideBlock;
import weltwright.sheath.pattern.CuttingSide;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.units.Length;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;
import weltwright.units.PrintScale;
import weltwright.wording.AdviceWording;

/**
 * The pages that lie on the bench beside the leather: the sheath as it will be, what goes into it, which edges to
 * finish before it is assembled, what to do in which order, and what to beware of.
 */
public final class BenchCard {
    private static final Messages TEXTS = Messages.of(BenchCard.class);

    private static final double MARGIN_MM = 14;
    private static final double FOOT_MM = 6;
    private static final double FOOT_SIZE_MM = 2.5;
    private static final double VIEW_HEIGHT_MM = 104;
    private static final double GAP_MM = 3;
    private static final double MM2_IN_CM2 = 100;
    private static final double MM2_IN_SQUARE_FOOT = 304.8 * 304.8;

    private final Pattern pattern;
    private final AssemblyPlan plan;
    private final Optional<SheathCost> cost;
    private final PageHeading heading;
    private final PdfTypeface typeface;
    private final PageFrame frame;
    private final double widthMm;
    private final MeasureUnit unit;
    private final List<List<CardFlow.Placed>> pages;

    /**
     * @param cost of the sheath without offcuts; empty where the maker has set no prices
     * @param frame a page of the card
     */
    public BenchCard(
            PdfTypeface typeface,
            Pattern pattern,
            AssemblyPlan plan,
            Optional<SheathCost> cost,
            PageHeading heading,
            PageFrame frame) {
        this.cost = cost;
        this.pattern = pattern;
        this.plan = plan;
        this.heading = heading;
        this.typeface = typeface;
        this.frame = frame;
        this.widthMm = frame.widthMm() - 2 * MARGIN_MM;
        this.unit = plan.unit();
        this.pages = layOut(frame.heightMm() - 2 * MARGIN_MM - FOOT_MM);
    }

    public int pageCount() {
        return pages.size();
    }

    /** Draws the card as the last pages of a document, numbered on. */
    public void draw(PDDocument document, PrintScale scale) throws IOException {
        int before = document.getNumberOfPages();
        double top = frame.heightMm() - MARGIN_MM;
        for (int i = 0; i < pages.size(); i++) {
            try (PdfCanvas canvas = PdfCanvas.onNewPage(document, typeface, frame.widthMm(), frame.heightMm(), scale)) {
                for (CardFlow.Placed placed : pages.get(i)) {
                    placed.block().draw(canvas, new Point(MARGIN_MM, top - placed.downMm()));
                }
                foot(canvas, TEXTS.text("bench-card.bench-card-page-of", before + i + 1, before + pages.size()));
            }
        }
    }

    private void foot(PdfCanvas canvas, String page) throws IOException {
        double width = typeface.widthMm(page, FOOT_SIZE_MM);
        canvas.write(page, new Point(MARGIN_MM + widthMm - width, MARGIN_MM), FOOT_SIZE_MM);
        String job = typeface.cut(heading.line(), widthMm - width - 10, FOOT_SIZE_MM);
        canvas.write(job, new Point(MARGIN_MM, MARGIN_MM), FOOT_SIZE_MM);
    }

    /** In as few pages as can be, and none for the cautions alone; if that goes, with them last and no table parted. */
    private List<List<CardFlow.Placed>> layOut(double heightMm) {
        return Stream.of(
                        layOut(new CardFlow(heightMm, true), false),
                        layOut(new CardFlow(heightMm, true), true),
                        layOut(new CardFlow(heightMm, false), false),
                        layOut(new CardFlow(heightMm, false), true))
                .min(Comparator.<List<List<CardFlow.Placed>>>comparingInt(List::size)
                        .thenComparing(this::endsWithCautionsAlone))
                .orElseThrow();
    }

    private boolean endsWithCautionsAlone(List<List<CardFlow.Placed>> pages) {
        return pages.get(pages.size() - 1).get(0).block().equals(cautions().get(0));
    }

    private List<List<CardFlow.Placed>> layOut(CardFlow flow, boolean cautionsBeforeSteps) {
        flow.addTogether(List.of(
                CardTitle.of(
                        typeface,
                        TEXTS.text("bench-card.bench-card"),
                        TEXTS.text("bench-card.not-to-scale", heading.line()),
                        widthMm),
                new BlankBlock(GAP_MM),
                overview()));
        if (!heading.notes().isBlank()) {
            flow.addProse(CardTitle.of(typeface, TEXTS.text("bench-card.notes"), "", widthMm), notes());
        }
        add(flow, TEXTS.text("bench-card.pieces"), leatherInAll(), pieces(), pattern.pieces());
        add(
                flow,
                TEXTS.text("bench-card.thread"),
                TEXTS.text("bench-card.saddle-stitch-one-thread-for"),
                thread(),
                pattern.seams());
        add(
                flow,
                TEXTS.text("bench-card.hardware"),
                TEXTS.text("bench-card.sizes-as-the-list-of"),
                hardware(),
                plan.hardware());
        warnings(flow);
        cost.ifPresent(sum ->
                flow.addTogether(List.of(CardTitle.of(typeface, TEXTS.text("bench-card.cost"), words(sum), widthMm))));
        addTable(
                flow,
                TEXTS.text("bench-card.finish-these-edges-before-assembly"),
                TEXTS.text("bench-card.they-are-out-of-reach"),
                edges().head(),
                edgeRows());
        if (cautionsBeforeSteps) {
            flow.addTogether(cautions());
        }
        addTable(flow, TEXTS.text("bench-card.the-work-in-order"), workInAll(), steps().head(), stepRows());
        flow.addTogether(checks());
        if (!cautionsBeforeSteps) {
            flow.addTogether(cautions());
        }
        return flow.pages();
    }

    private <T> void add(CardFlow flow, String title, String below, CardTable<T> table, List<T> items) {
        addTable(flow, title, below, table.head(), table.rows(items));
    }

    private void addTable(CardFlow flow, String title, String below, CardRow head, List<CardRow> rows) {
        if (!rows.isEmpty()) {
            flow.addTable(CardTitle.of(typeface, title, below, widthMm), head, rows);
        }
    }

    private <T> CardTable<T> table() {
        return new CardTable<>(typeface, widthMm);
    }

    private CardRow row(List<Column> columns, Kind kind, String... cells) {
        return CardRow.of(typeface, columns, List.of(cells), kind);
    }

    /** The finished sheath, and its sizes beside it. */
    private PageBlock overview() {
        CardTable<SheathDimension> sizes = this.<SheathDimension>table()
                .text(TEXTS.text("bench-card.when-it-is-sewn"), 0.29, SheathDimension::name)
                .numeric("mm", 0.10, size -> number("%.1f", size.lengthMm()))
                .numeric(
                        "in",
                        0.13,
                        size -> new Length(size.lengthMm()).inSixteenths().replace(" in", ""));
        List<PageBlock> beside = new ArrayList<>(List.of(sizes.head()));
        beside.addAll(sizes.rows(pattern.sizes()));
        List<Column> one = List.of(Column.text(TEXTS.text("bench-card.what-to-watch-for"), widthMm * 0.52));
        beside.add(new BlankBlock(GAP_MM));
        beside.add(CardRow.head(typeface, one));
        pattern.advice().forEach(advice -> beside.add(row(one, Kind.PLAIN, AdviceWording.line(advice, unit))));
        double left = widthMm * 0.45;
        double height = Math.max(
                VIEW_HEIGHT_MM, beside.stream().mapToDouble(PageBlock::heightMm).sum());
        return new SideBySideBlock(
                FinishedSheath.of(pattern).map(shape -> new FinishedView(shape, left, height, unit)),
                widthMm - sizes.widthMm(),
                beside,
                widthMm);
    }

    /** Line by line, for people paste whole letters here. */
    private List<CardRow> notes() {
        List<Column> one = List.of(Column.text("", widthMm));
        return typeface.wrap(heading.notes(), widthMm, CardRow.SIZE_MM).stream()
                .map(line -> row(one, Kind.PROSE, line))
                .toList();
    }

    private CardTable<Piece> pieces() {
        return this.<Piece>table()
                .text(TEXTS.text("bench-card.column.piece"), 0.2, Piece::name)
                .numeric(TEXTS.text("bench-card.column.cut"), 0.06, piece -> String.valueOf(piece.count()))
                .numeric(
                        TEXTS.text("bench-card.leather", unit.abbreviation()),
                        0.12,
                        piece -> unit.figures(piece.thicknessMm(), 1))
                .numeric("oz", 0.07, piece -> number("%.1f", piece.thicknessMm() / LengthUnit.OUNCE.inMm()))
                .numeric(TEXTS.text("bench-card.each-cm"), 0.1, piece -> number("%.0f", areaMm2(piece) / MM2_IN_CM2))
                .numeric(
                        TEXTS.text("bench-card.together-cm"),
                        0.13,
                        piece -> number("%.0f", piece.count() * areaMm2(piece) / MM2_IN_CM2))
                .text(
                        TEXTS.text("bench-card.which-side-is-up"),
                        0.32,
                        piece -> CuttingSide.of(pattern, piece).words());
    }

    private String leatherInAll() {
        double all = pattern.pieces().stream()
                .mapToDouble(piece -> piece.count() * areaMm2(piece))
                .sum();
        return TEXTS.text("bench-card.leather-in-the-pieces-cm", all / MM2_IN_CM2)
                + TEXTS.text("bench-card.square-feet-offcuts-not-counted", all / MM2_IN_SQUARE_FOOT);
    }

    private static String words(SheathCost cost) {
        return TEXTS.text(
                cost.leather().signum() == 0
                        ? "bench-card.by-your-prices-leather-not"
                        : "bench-card.by-your-prices-leather-without",
                cost.words(cost.leather()),
                cost.words(cost.hardware()),
                cost.words(cost.thread()),
                cost.words(cost.glueAndFinish()),
                cost.words(cost.labour()),
                cost.words(cost.overhead()),
                cost.words(cost.cost()),
                cost.words(cost.net()),
                cost.words(cost.gross()));
    }

    private static double areaMm2(Piece piece) {
        return Math.abs(piece.outline().signedAreaMm2());
    }

    private CardTable<Seam> thread() {
        return this.<Seam>table()
                .text(TEXTS.text("bench-card.column.seam"), 0.17, Seam::name)
                .numeric(TEXTS.text("bench-card.column.stitches"), 0.09, seam -> String.valueOf(seam.stitchCount()))
                .numeric(TEXTS.text("bench-card.pitch-mm"), 0.1, seam -> number("%.2f", seam.pitchMm()))
                .numeric(
                        TEXTS.text("bench-card.to-the-inch"),
                        0.11,
                        seam -> number("%.1f", LengthUnit.INCH.inMm() / seam.pitchMm()))
                .numeric(
                        TEXTS.text("bench-card.through", unit.abbreviation()),
                        0.12,
                        seam -> unit.figures(seam.thickestStackMm(), 1))
                .numeric(
                        TEXTS.text("bench-card.thread-m"),
                        0.1,
                        seam -> number("%.1f", new SaddleStitch(seam).metresToCut()))
                .numeric(TEXTS.text("bench-card.thick-mm"), 0.1, seam -> number("%.1f", new SeamTools(seam).threadMm()))
                .numeric(TEXTS.text("bench-card.column.needles"), 0.09, seam -> "2, " + new SeamTools(seam).needle())
                .numeric(TEXTS.text("bench-card.awl-mm"), 0.12, seam -> awl(new SeamTools(seam)));
    }

    private static String awl(SeamTools tools) {
        return number("%.1f", tools.awlWidthMm()) + number(" × %.0f", tools.awlLengthMm());
    }

    private CardTable<HardwareRequirement> hardware() {
        return this.<HardwareRequirement>table()
                .text(TEXTS.text("bench-card.what-for"), 0.28, HardwareRequirement::name)
                .numeric(TEXTS.text("bench-card.column.count"), 0.1, need -> String.valueOf(need.count()))
                .text(
                        TEXTS.text("bench-card.column.take"),
                        0.34,
                        need -> need.hardware().words())
                .numeric(
                        TEXTS.text("bench-card.punch", unit.abbreviation()),
                        0.14,
                        need -> need.punchMm() == 0 ? "" : unit.figures(need.punchMm(), 1))
                .numeric(
                        TEXTS.text("bench-card.through", unit.abbreviation()),
                        0.14,
                        need -> unit.figures(need.throughMm(), 1));
    }

    /** What is wrong with the hardware, called out under its table. */
    private void warnings(CardFlow flow) {
        List<Column> one = List.of(Column.text("", widthMm));
        for (HardwareRequirement need : plan.hardware()) {
            need.warnings().forEach(warning -> flow.addTogether(List.of(row(one, Kind.CALLED_OUT, warning))));
        }
    }

    private CardTable<LeatherEdge> edges() {
        return this.<LeatherEdge>table()
                .text(
                        TEXTS.text("bench-card.column.edge"),
                        0.3,
                        edge -> edge.piece() + ": " + edge.name()
                                + (edge.part().isHalf() ? ", " + edge.part().words() : ""))
                .text(
                        TEXTS.text("bench-card.groove-from-the-edge"),
                        0.24,
                        edge -> treatment(edge, OperationKind.GROOVE))
                .text(TEXTS.text("bench-card.column.bevel"), 0.22, edge -> treatment(edge, OperationKind.BEVEL))
                .text(TEXTS.text("bench-card.column.burnish"), 0.24, edge -> treatment(edge, OperationKind.BURNISH));
    }

    /** Stretches of one name and with the same treatments are one row. */
    private List<CardRow> edgeRows() {
        return plan.edges().stream()
                .filter(LeatherEdge::finishedBeforeAssembly)
                .map(edge -> edges().row(edge, Kind.CALLED_OUT))
                .distinct()
                .toList();
    }

    private static String treatment(LeatherEdge edge, OperationKind step) {
        String treatments = edge.treatments().stream()
                .filter(treatment -> treatment.step() == step)
                .map(treatment -> switch (step) {
                    case BEVEL -> treatment.size() + ", " + treatment.side().words();
                    default -> treatment.size();
                })
                .collect(Collectors.joining("; "));
        return treatments.isEmpty() ? TEXTS.text("bench-card.no-treatment") : treatments;
    }

    private String workInAll() {
        OperationTime time = plan.order().time();
        return TEXTS.text("bench-card.tick-what-is-done-a", time.inAll());
    }

    /** Operations by their number in the order. */
    private CardTable<Map.Entry<Integer, Operation>> steps() {
        return this.<Map.Entry<Integer, Operation>>table()
                .text("", 0.033, step -> "□")
                .numeric("", 0.043, step -> String.valueOf(step.getKey()))
                .text(
                        TEXTS.text("bench-card.column.what"),
                        0.424,
                        step -> step.getValue().work())
                .text(
                        TEXTS.text("bench-card.column.with"),
                        0.175,
                        step -> step.getValue().tool())
                .text(
                        TEXTS.text("bench-card.column.size"),
                        0.175,
                        step -> step.getValue().size())
                .numeric(
                        TEXTS.text("bench-card.column.time"),
                        0.075,
                        step -> step.getValue().time().benchWords())
                .numeric(
                        TEXTS.text("bench-card.column.wait"),
                        0.075,
                        step -> step.getValue().time().waitWords());
    }

    private List<CardRow> stepRows() {
        List<CardRow> rows = new ArrayList<>();
        WorkPhase phase = null;
        int number = 0;
        for (Operation operation : plan.order().operations()) {
            if (operation.phase() != phase) {
                phase = operation.phase();
                rows.add(row(List.of(Column.text("", widthMm)), Kind.PART, phase.words()));
            }
            number++;
            rows.add(steps().row(
                            Map.entry(number, operation), operation.edgeBeforeAssembly() ? Kind.CALLED_OUT : Kind.PLAIN)
                    .withNote(typeface, operation.note(), 2));
        }
        return rows;
    }

    private List<PageBlock> checks() {
        List<PageBlock> blocks = new ArrayList<>(List.of(CardTitle.of(
                typeface,
                TEXTS.text("bench-card.last-check"),
                TEXTS.text("bench-card.before-the-sheath-is-handed"),
                widthMm)));
        blocks.addAll(this.<String>table()
                .text("", 0.033, check -> "□")
                .text("", 0.967, check -> check)
                .rows(plan.finalChecks()));
        return blocks;
    }

    private List<PageBlock> cautions() {
        List<PageBlock> blocks =
                new ArrayList<>(List.of(CardTitle.of(typeface, TEXTS.text("bench-card.take-care"), "", widthMm)));
        List<Column> one = List.of(Column.text("", widthMm));
        blocks.add(new BlankBlock(GAP_MM / 2));
        SafetyCautions.WHOLE.forEach(caution -> blocks.add(row(one, Kind.PLAIN, caution)));
        return blocks;
    }

    private static String number(String format, double value) {
        return String.format(Language.current().locale(), format, value);
    }
}
