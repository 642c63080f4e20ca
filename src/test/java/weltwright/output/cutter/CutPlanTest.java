package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Circle;
import weltwright.output.cutter.CutElement.Text;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.SheathSpec;

class CutPlanTest {
    private static final double GAP_MM = 5;

    /** A bed of A4's size, which is small for a cutter. */
    private static final CutterBed SMALL = new CutterBed(297, 210, LeatherSide.GRAIN);

    @Test
    void aBedHoldsOneLeather() {
        Pattern pattern = CutSamples.folded();
        Pattern thin = new Pattern(
                pattern.pieces().stream()
                        .map(piece -> piece.kind() == Piece.Kind.WELT
                                ? new Piece(piece.kind(), 2, 2, piece.outline(), piece.holes(), piece.marks())
                                : piece)
                        .toList(),
                pattern.seams(),
                pattern.fastenings(),
                pattern.drawCheck(),
                pattern.sizes(),
                pattern.advice(),
                pattern.sheathed());
        CutPlan plan = CutPlan.of(thin, CutterBed.USUAL, CutSamples.heading(""));
        assertThat(plan.sheets()).hasSize(2);
        assertThat(plan.sheets().get(1).pieces()).extracting(CutPiece::id).containsExactly("welt-1", "welt-2");
        assertThat(plan.sheets().get(1).notes())
                .anyMatch(note -> ((Text) note.shape()).text().equals("Bed 2 of 2: 2.0 mm leather, grain side up"));
        assertThat(plan.sheets().get(0).pieces()).extracting(CutPiece::id).contains(CutPlan.SQUARE_ID);
    }

    /** On a bed too small for all of them at once there are several. */
    @Property(tries = 40)
    void piecesKeepApartAndOnTheirBed(@ForAll("specs") SheathSpec spec, @ForAll boolean small, @ForAll LeatherSide up) {
        Pattern pattern;
        try {
            pattern = PatternMaker.make(TestKnives.dropPoint(), spec);
        } catch (UserFacingException refused) {
            Assume.that(false);
            return;
        }
        CutterBed bed = small ? new CutterBed(300, 210, up) : new CutterBed(600, 400, up);
        CutPlan plan = CutPlan.of(pattern, bed, CutSamples.heading("heading"));
        assertThat(plan.pieces().map(CutPiece::id)).doesNotHaveDuplicates();
        assertThat(plan.pieces())
                .hasSize(1 + pattern.pieces().stream().mapToInt(Piece::count).sum());
        for (CutSheet sheet : plan.sheets()) {
            Envelope room = new Envelope(sheet.leftMm(), sheet.leftMm() + sheet.widthMm(), 0, sheet.heightMm());
            room.expandBy(-GAP_MM + 0.01);
            List<Geometry> cuts = new ArrayList<>();
            for (CutPiece piece : sheet.pieces()) {
                Polygon cut = cut(piece);
                assertThat(room.contains(cut.getEnvelopeInternal()))
                        .as(piece.id())
                        .isTrue();
                for (Geometry other : cuts) {
                    assertThat(cut.distance(other)).as(piece.id()).isGreaterThan(GAP_MM - 0.01);
                }
                cuts.add(cut);
                assertThat(Math.signum(
                                ((Chain) piece.elements().get(0).shape()).line().signedAreaMm2()))
                        .as("mirrored where the flesh side is up")
                        .isEqualTo(up == LeatherSide.GRAIN || piece.id().equals(CutPlan.SQUARE_ID) ? 1 : -1);
            }
        }
    }

    @Provide
    net.jqwik.api.Arbitrary<SheathSpec> specs() {
        return TestSpecs.any();
    }

    /** The widths of words are Java's own. */
    @ParameterizedTest
    @EnumSource(LeatherSide.class)
    void wordsNeverLieOnLeather(LeatherSide up) {
        CutPlan plan = CutPlan.of(CutSamples.panels(), new CutterBed(600, 400, up), CutSamples.heading("heading"));
        List<Geometry> texts = new ArrayList<>();
        for (CutPiece piece : plan.pieces().toList()) {
            for (CutElement element : piece.elements()) {
                if (element.shape() instanceof Text text) {
                    assertThat(text.text()).isEqualTo(piece.name());
                    texts.add(box(text));
                }
            }
        }
        assertThat(texts).hasSize((int) plan.pieces().count());
        for (CutPiece piece : plan.pieces().toList()) {
            assertThat(texts).as(piece.id()).allMatch(text -> text.disjoint(cut(piece)));
        }
        for (int i = 0; i < texts.size(); i++) {
            Geometry text = texts.get(i);
            assertThat(texts.subList(0, i)).allMatch(other -> other.disjoint(text));
        }
    }

    private static Geometry box(Text text) {
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 100);
        Rectangle2D box = font.getStringBounds(text.text(), new FontRenderContext(null, true, true));
        double capital = font.createGlyphVector(new FontRenderContext(null, true, true), "H")
                .getVisualBounds()
                .getHeight();
        double scale = text.capitalMm() / capital;
        Point from = text.from();
        return new GeometryFactory()
                .toGeometry(new Envelope(
                        from.x(),
                        from.x() + scale * box.getWidth(),
                        from.y() - 0.3 * text.capitalMm(),
                        from.y() + text.capitalMm()));
    }

    /** What shows once the sheath is made bears no line: on the grain side there is only what other leather covers. */
    @Test
    void onTheGrainSideOnlyWhatIsCoveredIsMarked() {
        for (Pattern pattern : List.of(CutSamples.folded(), CutSamples.panels())) {
            int covered = 0;
            for (Piece piece : pattern.pieces()) {
                List<Geometry> places = piece.marks().stream()
                        .filter(mark -> mark.kind() == Mark.Kind.PLACE
                                && mark.line().points().size() > 2)
                        .map(mark ->
                                (Geometry) Polyline.closed(mark.line().points()).polygon())
                        .toList();
                for (CutElement element : PieceElements.of(piece, LeatherSide.GRAIN)) {
                    if (element.layer() == CutLayer.MARK_GRAIN) {
                        Geometry line = ((Chain) element.shape()).line().lineString();
                        assertThat(places)
                                .anyMatch(place -> place.contains(line)
                                        && place.getBoundary().distance(line) > 1.4);
                        covered++;
                    }
                }
            }
            assertThat(covered).as("the end of the belt loop").isEqualTo(1);
        }
    }

    @Test
    void allOtherMarksAreForTheFleshSide() {
        Piece body = CutSamples.folded().pieces().get(0);
        List<CutElement> marks = PieceElements.of(body, LeatherSide.FLESH).stream()
                .filter(element -> element.layer() == CutLayer.MARK_FLESH)
                .toList();
        long onGrain = body.marks().stream()
                .filter(mark -> mark.label().equals("end of the belt loop"))
                .count();
        assertThat(marks).hasSize(body.marks().size() - (int) onGrain);
    }

    @Test
    void leastStretchLiesAlongTheLongerSide() {
        for (CutterBed bed : List.of(CutterBed.USUAL, new CutterBed(400, 600, LeatherSide.FLESH))) {
            CutPlan plan = CutPlan.of(CutSamples.panels(), bed, CutSamples.heading(""));
            int arrows = 0;
            for (CutPiece piece : plan.pieces().toList()) {
                for (CutElement element : piece.elements()) {
                    if (element.label().equals("least stretch")) {
                        List<Point> points = ((Chain) element.shape()).line().points();
                        Point arrow = points.get(points.size() - 1)
                                .minus(points.get(0))
                                .unit();
                        double along = bed.widthMm() > bed.heightMm() ? arrow.x() : arrow.y();
                        assertThat(Math.abs(along)).isCloseTo(1, within(1e-9));
                        arrows++;
                    }
                }
            }
            assertThat(arrows).isGreaterThanOrEqualTo(2);
        }
    }

    /** Never refused, since the printed pattern and the job are as good as ever: but said. */
    @Test
    void aPieceLargerThanTheBedIsSaid() {
        CutPlan plan =
                CutPlan.of(CutSamples.folded(), new CutterBed(120, 100, LeatherSide.GRAIN), CutSamples.heading(""));
        assertThat(plan.advice()).anyMatch(line -> line.startsWith("body: larger than the cutter's bed"));
        assertThat(plan.pieces().map(CutPiece::id)).contains("body", CutPlan.SQUARE_ID);
    }

    /** A strap cut across the stretch, by mistake or for want of leather, is weaker. */
    @Test
    void aPieceThatFitsOnlyAcrossTheStretchIsTurnedAndSaid() {
        Pattern sample = CutSamples.folded();
        Piece wide = new Piece(
                Piece.Kind.FACE,
                "flap",
                "flap",
                1,
                3,
                Polyline.closed(List.of(new Point(0, 0), new Point(180, 0), new Point(180, 60), new Point(0, 60))),
                List.of(),
                List.of(new Mark(
                        Polyline.open(List.of(new Point(20, 10), new Point(20, 50))),
                        Mark.Kind.GRAIN,
                        "least stretch")));
        Pattern pattern = new Pattern(
                List.of(wide), List.of(), List.of(), sample.drawCheck(), List.of(), List.of(), sample.sheathed());
        CutPlan plan = CutPlan.of(pattern, new CutterBed(250, 100, LeatherSide.GRAIN), CutSamples.heading(""));
        assertThat(plan.advice())
                .containsExactly("flap: finds room on the cutter's bed only across the direction of least stretch.");
        assertThat(CutPlan.of(pattern, CutterBed.USUAL, CutSamples.heading("")).advice())
                .isEmpty();
    }

    @Test
    void anOddBedIsRefused() {
        assertThatThrownBy(() -> new CutterBed(20, 300, LeatherSide.GRAIN))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("width of the cutter's bed");
    }

    @Test
    void holesAndMarksStayWithTheirPiece() {
        CutPlan plan = CutPlan.of(CutSamples.panels(), SMALL, CutSamples.heading(""));
        for (CutPiece piece : plan.pieces().toList()) {
            Polygon cut = cut(piece);
            for (CutElement element : piece.elements()) {
                if (element.shape() instanceof Circle circle) {
                    assertThat(cut.contains(
                                    cut.getFactory().createPoint(circle.centre().coordinate())))
                            .isTrue();
                }
            }
        }
    }

    private static Polygon cut(CutPiece piece) {
        assertThat(piece.elements().get(0).layer()).isEqualTo(CutLayer.CUT);
        return ((Chain) piece.elements().get(0).shape()).line().polygon();
    }
}
