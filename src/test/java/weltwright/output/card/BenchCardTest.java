package weltwright.output.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.LeatherEdge;
import weltwright.assembly.Operation;
import weltwright.assembly.WorkPhase;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.cost.PriceList;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.output.print.PatternPdf;
import weltwright.output.print.PieceCaption;
import weltwright.output.print.PieceDrawing;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.CuttingSide;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.PrintScale;
import weltwright.wording.AdviceWording;

/** The bench card as it is read from the PDF. */
class BenchCardTest {
    private static final PageHeading HEADING =
            new PageHeading("Ylva Bräntholm", "Drop point, 105 mm", LocalDate.of(2024, 3, 9), "Dark brown edges.");

    private static final GeometryFactory JTS = new GeometryFactory();

    @TempDir
    private Path folder;

    private static Pattern pattern(SheathKind kind) {
        return PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(kind));
    }

    private String card(Pattern pattern, PageHeading heading, PaperSize paper) throws IOException {
        return String.join(" ", cardPages(pattern, heading, paper));
    }

    /** The pages of the card alone: those of the pattern before it take longer to draw than the card. */
    private List<String> cardPages(Pattern pattern, PageHeading heading, PaperSize paper) throws IOException {
        byte[] pdf = TrueSizePdf.bytes(
                heading.title(),
                Optional.of(heading.date()),
                (document, typeface) -> new BenchCard(
                                typeface,
                                pattern,
                                AssemblyPlan.of(pattern),
                                Optional.empty(),
                                heading,
                                paper.ofCard().frame(PrintScale.TRUE))
                        .draw(document, PrintScale.TRUE));
        return pages(Files.write(folder.resolve("card.pdf"), pdf));
    }

    private static List<String> pages(Path file) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(false);
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(stripper.getText(document).replaceAll("[\\s\\u00a0]+", " "));
            }
        }
        return pages.stream().filter(page -> page.contains("Bench card, page")).toList();
    }

    /** The order on the card is that of the plan, each step with its tool and its size. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theStepsAreThereInOrder(SheathKind kind) throws IOException {
        Pattern pattern = pattern(kind);
        String card = card(pattern, HEADING, PaperSize.A4);
        int at = card.indexOf("The work, in order");
        assertThat(at).isPositive();
        for (Operation operation : AssemblyPlan.of(pattern).order().operations()) {
            int found = card.indexOf(operation.work(), at);
            assertThat(found).as(operation.work()).isGreaterThan(at);
            assertThat(card.indexOf(operation.tool(), found)).isPositive();
            assertThat(card.indexOf(operation.size(), found)).isPositive();
            at = found;
        }
    }

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void sizesPiecesEdgesAndCautionsAreThere(SheathKind kind) throws IOException {
        Pattern pattern = pattern(kind);
        String card = card(pattern, HEADING, PaperSize.LETTER);

        for (SheathDimension size : pattern.sizes()) {
            assertThat(card).contains(size.name() + " " + PieceDrawing.millimetres(size.lengthMm()));
        }
        for (Piece piece : pattern.pieces()) {
            double cm2 = piece.outline().polygon().getArea() / 100;
            assertThat(card)
                    .containsPattern("%s %d [0-9. ]+ %d %d"
                            .formatted(piece.name(), piece.count(), Math.round(cm2), Math.round(piece.count() * cm2)));
        }
        assertThat(card)
                .contains("Ylva Bräntholm", "Dark brown edges.")
                .contains("Finish these edges before assembly", "throat", "end of the belt loop")
                .contains("tape its edge and point", "in a mask", "over a soft surface")
                .contains("The law on making, owning and carrying knives", "skilled maker");
        for (Advice advice : pattern.advice()) {
            assertThat(card).contains(AdviceWording.line(advice));
        }
    }

    /** People paste whole letters into a field for notes: all of it is on the card, and nothing beyond its paper. */
    @Test
    void longNotesRunOverAsManyPagesAsTheyTake() throws IOException {
        String notes = IntStream.range(0, 3000).mapToObj(i -> "word" + i).collect(Collectors.joining(" "));
        PageHeading heading = new PageHeading("Y", "x".repeat(500), LocalDate.of(2024, 3, 9), notes);
        List<String> pages = cardPages(pattern(SheathKind.FOLDED), heading, PaperSize.LETTER);

        assertThat(String.join(" ", pages))
                .contains("word0 ")
                .contains("word1500 ")
                .contains("word2999 ");
        try (PDDocument document = Loader.loadPDF(folder.resolve("card.pdf").toFile())) {
            List<TextPosition> letters = new ArrayList<>();
            new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    letters.addAll(positions);
                }
            }.getText(document);
            // 8.5 in by 11 in, and points of 1/72 in.
            assertThat(letters).isNotEmpty().allSatisfy(letter -> {
                assertThat(letter.getX()).isBetween(0f, letter.getPageWidth());
                assertThat(letter.getY()).isBetween(0f, 792f);
            });
        }
    }

    /** A table that runs over a page begins anew with its head. */
    @Test
    void eachPageHasItsNumberAndALongTableItsHead() throws IOException {
        PageHeading long_ = new PageHeading(
                "Ylva Bräntholm", "Drop point", LocalDate.of(2024, 3, 9), "Note this, and that too. ".repeat(40));
        Pattern panels = pattern(SheathKind.PANELS);
        Path file = folder.resolve("pattern.pdf");
        PatternPdf.write(panels, AssemblyPlan.of(panels), long_, PaperSize.LETTER, PrintScale.TRUE, file);
        List<String> pages = pages(file);
        int pattern = 1; // page of the pattern, before the card

        assertThat(pages.size()).isGreaterThan(1);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i))
                    .contains("Bench card, page " + (i + 1 + pattern) + " of " + (pattern + pages.size()));
        }
        assertThat(pages)
                .filteredOn(page -> page.contains("pricking iron"))
                .allSatisfy(page -> assertThat(page).contains("what with size"));
    }

    /**
     * Each kind of sheath with all that makes a card long: no title of a part is alone at the foot of a page, and no
     * page would be turned for the cautions alone.
     */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void noTitleAndNoCautionsAreLeftAloneOnAPage(SheathKind kind) throws IOException {
        for (BeltAttachment.Style style : BeltAttachment.Style.values()) {
            Pattern pattern = PatternMaker.make(
                    TestKnives.dropPoint(),
                    TestSpecs.bladeAlone(kind)
                            .withBelt(new BeltAttachment(style, 38, 4))
                            .withStrap(Optional.of(HandleStrap.USUAL)));
            List<String> pages = new ArrayList<>(cardPages(pattern, HEADING, PaperSize.A4));
            assertThat(pages).noneMatch(page -> page.startsWith("Take care"));
            if (style.ordinal() % 2 == 1) {
                pages.addAll(cardPages(pattern, HEADING, PaperSize.LETTER));
            }
            for (WorkPhase phase : WorkPhase.values()) {
                assertThat(pages).noneMatch(page -> page.contains(phase.words() + " Bench card, page"));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void timesAndTheLastCheckAreThere(SheathKind kind) throws IOException {
        Pattern pattern = pattern(kind);
        AssemblyPlan plan = AssemblyPlan.of(pattern);
        String card = card(pattern, HEADING, PaperSize.A4);

        assertThat(card).contains("Times are estimates", plan.order().time().inAll());
        assertThat(plan.finalChecks())
                .isNotEmpty()
                .allSatisfy(check -> assertThat(card).contains(check));
        for (Piece piece : pattern.pieces()) {
            assertThat(card).contains(CuttingSide.of(pattern, piece).words());
        }
    }

    /** The knife comes out of the throat by its handle, and none of its hidden outline lies beyond the sheath. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theFinishedViewShowsTheKnifeInTheSheath(SheathKind kind) {
        FinishedSheath shape = FinishedSheath.of(pattern(kind)).orElseThrow();
        double hidden = shape.hidden().stream().mapToDouble(Polyline::lengthMm).sum();
        double below = shape.knife()
                .lineString()
                .intersection(JTS.toGeometry(new Envelope(-500, 500, -500, shape.lengthMm() - 8)))
                .getLength();

        assertThat(shape.face()
                        .polygon()
                        .buffer(0.1)
                        .covers(shape.knife()
                                .polygon()
                                .intersection(JTS.toGeometry(new Envelope(-500, 500, -500, shape.lengthMm() - 8)))))
                .isTrue();
        assertThat(hidden).isGreaterThanOrEqualTo(below - 0.5);
        double knife = TestKnives.dropPoint().landmarks().tip().x()
                - TestKnives.dropPoint().landmarks().butt().x();
        assertThat(shape.knife().lineString().getEnvelopeInternal().getHeight()).isCloseTo(knife, within(1.0));
    }

    /** Readable in black and white: a line of its own and a letter of its own for each. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void whereTheStateOfAnEdgeChangesALetterSaysSo(SheathKind kind) throws IOException {
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(), TestSpecs.bladeAlone(kind).withStrap(Optional.of(HandleStrap.USUAL)));
        List<LeatherEdge> edges = AssemblyPlan.of(pattern).edges();
        try (PDDocument document = new PDDocument()) {
            PdfTypeface typeface = PdfTypeface.in(document);
            for (Piece piece : pattern.pieces()) {
                List<LeatherEdge> own = edges.stream()
                        .filter(e -> e.piece().equals(piece.name()))
                        .toList();
                PieceDrawing drawing = PieceDrawing.of(piece, own, PieceCaption.of(pattern, piece, HEADING), typeface);
                List<String> letters = drawing.labels().stream()
                        .filter(Label::ringed)
                        .map(label -> label.lines().get(0))
                        .toList();

                String round = own.stream().map(BenchCardTest::letter).collect(Collectors.joining());
                // Round the piece, each run of equal letters once.
                String runs = round.replaceAll("(.)\\1+", "$1");
                if (runs.length() > 1 && runs.charAt(0) == runs.charAt(runs.length() - 1)) {
                    runs = runs.substring(1);
                }
                assertThat(letters).containsExactlyInAnyOrder(runs.split(""));
                assertThat(drawing.edges())
                        .allSatisfy(stroke -> assertThat(piece.outline()
                                        .polygon()
                                        .covers(stroke.line().lineString()))
                                .isTrue());
            }
        }
    }

    private static String letter(LeatherEdge edge) {
        return edge.treatments().isEmpty()
                ? "N"
                : switch (edge.state()) {
                    case SEWN -> "S";
                    case OUT_OF_REACH -> "B";
                    case FREE -> "F";
                };
    }

    @Test
    void hardwareIsThereWithItsPunch() throws IOException {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4))
                .withStrap(Optional.of(HandleStrap.USUAL));
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), spec);
        String card = card(pattern, HEADING, PaperSize.A4);

        // Three layers of 3 mm; a hole of 1/8 in is 3.2 mm. The strap round the handle is of 2 mm. Common practice.
        assertThat(card).containsPattern("belt strap rivets 2 [^0-9]+9 mm[^0-9]+3\\.2 9\\.0");
        assertThat(card).containsPattern("handle strap snap 1 snap, line 20 3\\.5 2\\.0");
    }

    /**
     * A chisel's slant is lost where a layer is struck from the wrong side; the cap goes where the strap meets on the
     * knife.
     */
    @Test
    void sidesAndPlacesThatThePatternDoesNotShowAreTold() throws IOException {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.FOLDED).withStrap(Optional.of(HandleStrap.USUAL));
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), spec);
        Path file = folder.resolve("told.pdf");
        PatternPdf.write(pattern, AssemblyPlan.of(pattern), HEADING, PaperSize.A4, PrintScale.TRUE, file);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertThat(new PDFTextStripper().getText(document).replaceAll("[\\s\\u00a0]+", " "))
                    .contains("from the side towards the face half", "cap: find its place on the knife");
        }
    }

    /** 500 per square metre of leather and 30 an hour; the cost is their sum, for nothing else has a price. */
    @Test
    void theCostIsToldWherePricesAreSet() throws IOException {
        Pattern pattern = pattern(SheathKind.PANELS);
        BigDecimal none = BigDecimal.ZERO;
        for (LeatherPrice.Per per : List.of(LeatherPrice.Per.SQUARE_METRE, LeatherPrice.Per.STOCK)) {
            PriceList prices = new PriceList(
                    Currency.getInstance("EUR"),
                    new LeatherPrice(new BigDecimal("500"), per),
                    none,
                    Map.of(),
                    none,
                    none,
                    new BigDecimal("30"),
                    none,
                    none,
                    none,
                    none);
            Path file = folder.resolve("cost.pdf");
            PatternPdf.write(
                    pattern,
                    AssemblyPlan.of(pattern),
                    Optional.of(SheathCost.of(SheathNeeds.withoutOffcuts(pattern), prices)),
                    HEADING,
                    PaperSize.A4,
                    PrintScale.TRUE,
                    file);
            BigDecimal leather = new BigDecimal(pattern.pieces().stream()
                            .mapToDouble(piece ->
                                    piece.count() * piece.outline().polygon().getArea())
                            .sum()
                    * 500e-6);
            BigDecimal labour =
                    new BigDecimal(AssemblyPlan.of(pattern).order().time().benchMinutes() / 2.0);
            boolean counted = per == LeatherPrice.Per.SQUARE_METRE;
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                assertThat(new PDFTextStripper().getText(document).replaceAll("[\\s\\u00a0]+", " "))
                        .contains(
                                counted ? "leather EUR " + cents(leather) + " without offcuts" : "leather not counted",
                                "labour EUR " + cents(labour),
                                "; cost EUR " + cents(counted ? cents(leather).add(labour) : labour) + ". Price EUR ");
            }
        }
        assertThat(card(pattern, HEADING, PaperSize.A4)).doesNotContain("By your prices");
    }

    private static BigDecimal cents(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_UP);
    }

    /** Leather too thick for any rivet in the list: three layers of 6 mm. The card says so in words. */
    @Test
    void aStackTooThickForItsRivetsIsCalledOut() throws IOException {
        SheathSpec usual = TestSpecs.bladeAlone(SheathKind.PANELS);
        SheathSpec thick = usual.withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4))
                .withLeather(new Leather(6, 0.5, 0, Leather.Bulge.SHARED));
        String card = card(PatternMaker.make(TestKnives.dropPoint(), thick), HEADING, PaperSize.A4);

        assertThat(card).contains("and here it is 18 mm: too thick. Take a longer post, or skive the leather there.");
    }

    /** Not by our own arithmetic: the loop drawn from the flat leather is as high as the size that the belt gave. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theFinishedShapeHasTheMainSizes(SheathKind kind) {
        FinishedSheath shape = FinishedSheath.of(pattern(kind)).orElseThrow();

        assertThat(shape.extent().getHeight()).isCloseTo(shape.withLoopMm(), within(2.0));
        assertThat(shape.face().lineString().getEnvelopeInternal().getWidth()).isCloseTo(shape.widthMm(), within(0.1));
        assertThat(shape.extent().getWidth()).isCloseTo(shape.widthMm(), within(1.0));
    }
}
