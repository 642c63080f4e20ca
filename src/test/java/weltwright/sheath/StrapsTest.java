package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.TestKnives;
import weltwright.sheath.attachment.StrapPiece;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.StrapLeather;

class StrapsTest {
    private static final double INCH = 25.4;

    /** Common practice: 5/8 in wide, about 7 in long for a wide belt, four rivet holes, 1/2 in beyond the last one. */
    @Test
    void aRivetedBeltStrapIsAsMakersCutIt() {
        StrapLeather narrow = new StrapLeather(INCH * 5 / 8, OptionalDouble.empty());
        Pattern pattern =
                with(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 1.75 * INCH, 4, narrow), Optional.empty());
        Piece strap = piece(pattern, "belt strap");
        var box = strap.outline().polygon().getEnvelopeInternal();

        assertThat(box.getWidth()).isCloseTo(INCH * 5 / 8, within(0.01));
        assertThat(box.getHeight()).isCloseTo(7 * INCH, within(10.0));
        assertThat(strap.holes()).hasSize(4).allMatch(hole -> hole.use() == Hole.Use.RIVET);
        double lowest = strap.holes().stream()
                .mapToDouble(hole -> hole.centre().y())
                .min()
                .orElseThrow();
        assertThat(lowest - box.getMinY()).isCloseTo(INCH / 2, within(1e-6));
    }

    /** Half-round ends: two half discs and a rectangle between them. */
    @Test
    void aStrapHasHalfRoundEnds() {
        double width = INCH * 5 / 8;

        assertThat(new StrapPiece(160, width).outline().signedAreaMm2())
                .isCloseTo(width * (160 - width) + Math.PI * width * width / 4, within(1.0));
    }

    /** A wider and a thicker belt each want a longer strap: by twice the width, and by the bend round the thickness. */
    @Test
    void theBeltDrivesTheStrapsLength() {
        double usual = length(
                with(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4), Optional.empty()), "belt strap");
        double wider = length(
                with(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 48, 4), Optional.empty()), "belt strap");
        double thicker = length(
                with(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 6), Optional.empty()), "belt strap");

        assertThat(wider - usual).isCloseTo(20, within(0.1));
        // Half a turn on a radius 1 mm greater, less 1 mm on each leg, and the wedge below the belt.
        double wedge = Math.hypot(10, 6) - Math.hypot(10, 4);
        assertThat(thicker - usual).isCloseTo(Math.PI - 2 + wedge, within(0.01));
    }

    /** Folded in the middle, each hole of one end lies on its partner of the other. */
    @ParameterizedTest
    @EnumSource(
            value = BeltAttachment.Style.class,
            names = {"RIVETED_STRAP", "SEWN_STRAP"})
    void theStrapsEndsLieOnEachOther(BeltAttachment.Style style) {
        Pattern pattern = with(new BeltAttachment(style, 38, 4), Optional.empty());
        List<Seam.Layer> layers = style == BeltAttachment.Style.SEWN_STRAP
                ? pattern.seams().get(1).layers()
                : pattern.fastenings().get(0).layers();
        List<Point> inner = layers.get(1).holes();
        List<Point> outer = layers.get(2).holes();
        double level = inner.get(0).y() + outer.get(0).y();

        assertThat(layers.get(0).piece()).isEqualTo("back");
        for (int i = 0; i < inner.size(); i++) {
            assertThat(outer.get(i).x()).isCloseTo(inner.get(i).x(), within(1e-9));
            assertThat(outer.get(i).y() + inner.get(i).y()).isCloseTo(level, within(1e-9));
        }
    }

    @Test
    void aHangingSheathHasARingAndThreeLayersOnItsRivets() {
        Pattern pattern = with(new BeltAttachment(BeltAttachment.Style.HANGING_RING, 38, 4), Optional.empty());
        PlacedHardware ring = fastening(pattern, "ring");
        PlacedHardware rivets = fastening(pattern, "belt strap rivets");

        assertThat(ring.kind()).isEqualTo(Hardware.Kind.RING);
        assertThat(((Ring) ring.hardware()).insideMm()).isGreaterThanOrEqualTo(StrapLeather.BELT.widthMm());
        assertThat(rivets.stackMm()).isCloseTo(9, within(1e-9));
        assertThat(piece(pattern, "belt strap").holes()).hasSize(6);
    }

    /**
     * Round a handle that is a cylinder of 20 mm: the neutral fibre of 2 mm leather goes round at 11 mm. To that come
     * the allowance, 1/2 in beyond either snap, and a quarter turn of the thickness where the one arm climbs on the
     * other.
     */
    @Test
    void theHandleStrapGoesOnceRoundTheHandle() {
        Pattern pattern = PatternMaker.make(
                roundHandle(),
                TestSpecs.bladeAlone(SheathKind.PANELS)
                        .withStrap(Optional.of(new HandleStrap(20, HandleStrap.Side.RIGHT, 1))));

        assertThat(length(pattern, "handle strap"))
                .isCloseTo(2 * Math.PI * 11 + 1 + INCH + Math.PI / 2 * 2, within(0.1));
        assertThat(piece(pattern, "handle strap").holes())
                .extracting(Hole::use)
                .containsExactly(Hole.Use.SNAP, Hole.Use.RIVET, Hole.Use.SNAP);
    }

    /** The strap is cut from a leather of its own, and what holds it is chosen for that. */
    @Test
    void eachStrapIsCutAsWideAndFromTheLeatherThatIsChosen() {
        StrapLeather belt = new StrapLeather(20, OptionalDouble.of(2.5));
        StrapLeather handle = new StrapLeather(18, OptionalDouble.empty());
        Pattern pattern = with(
                new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4, belt),
                Optional.of(HandleStrap.USUAL.withLeather(handle)));

        assertThat(piece(pattern, "belt strap").thicknessMm()).isEqualTo(2.5);
        assertThat(piece(pattern, "belt strap")
                        .outline()
                        .polygon()
                        .getEnvelopeInternal()
                        .getWidth())
                .isCloseTo(20, within(0.01));
        assertThat(fastening(pattern, "belt strap rivets").stackMm()).isEqualTo(3 + 2 * 2.5);
        assertThat(piece(pattern, "handle strap").thicknessMm()).isEqualTo(3);
        assertThat(piece(pattern, "handle strap")
                        .outline()
                        .polygon()
                        .getEnvelopeInternal()
                        .getWidth())
                .isCloseTo(18, within(0.01));
        assertThat(fastening(pattern, "handle strap snap").stackMm()).isEqualTo(3);
    }

    /**
     * A box is whole pitches each way: 25 mm less twice 1/8 in takes four of 4 mm, and 18 mm of height is nearest to
     * 4½.
     */
    @Test
    void theSameIronFitsASewnStrap() {
        Pattern pattern = with(new BeltAttachment(BeltAttachment.Style.SEWN_STRAP, 38, 4), Optional.empty());
        Seam seam = pattern.seams().get(1);
        List<Point> holes = seam.layers().get(2).holes();

        assertThat(seam.pitch()).isEqualTo(new Seam.Pitch(4, 4, 4));
        for (int i = 0; i < holes.size(); i++) {
            assertThat(holes.get(i).distance(holes.get((i + 1) % holes.size()))).isCloseTo(4, within(1e-9));
        }
    }

    /** Twice 12 mm of margin leave 1 mm of a strap of 25 mm, on which nothing can be sewn. */
    @Test
    void aStrapTooNarrowForItsStitchesIsRefused() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS)
                .withBelt(BeltAttachment.USUAL.withStyle(BeltAttachment.Style.SEWN_STRAP))
                .withStitching(new Stitching(12, 4, 2, OptionalDouble.empty()));

        assertThatThrownBy(() -> PatternMaker.make(TestKnives.dropPoint(), spec))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("25.0 mm wide")
                .hasMessageContaining("strap at least 30.0 mm wide, a smaller stitch margin");
    }

    /** The corners of the box keep their margin in the round end of a wide strap. */
    @Test
    void aWideStrapIsCutLongEnoughBeyondItsStitches() {
        StrapLeather wide = new StrapLeather(60, OptionalDouble.empty());
        Pattern pattern = PatternMaker.make(
                TestKnives.leaf(),
                SheathSpec.standard(SheathKind.PANELS)
                        .withHandleDepthMm(60)
                        .withBelt(new BeltAttachment(BeltAttachment.Style.SEWN_STRAP, 38, 4, wide)));
        Piece strap = piece(pattern, "belt strap");
        var cut = strap.outline().lineString();

        assertThat(strap.holes())
                .allMatch(hole ->
                        cut.distance(cut.getFactory().createPoint(hole.centre().coordinate())) > 25.4 / 8 - 0.05);
    }

    @Test
    void theOtherSideTurnsTheStrapOver() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS);
        Piece right = piece(
                PatternMaker.make(
                        roundHandle(), spec.withStrap(Optional.of(new HandleStrap(20, HandleStrap.Side.RIGHT, 1)))),
                "handle strap");
        Piece left = piece(
                PatternMaker.make(
                        roundHandle(), spec.withStrap(Optional.of(new HandleStrap(20, HandleStrap.Side.LEFT, 1)))),
                "handle strap");
        double length = right.outline().polygon().getEnvelopeInternal().getHeight();

        for (int i = 0; i < 3; i++) {
            assertThat(left.holes().get(i).centre().y())
                    .isCloseTo(length - right.holes().get(i).centre().y(), within(1e-9));
        }
    }

    /** The rivet behind the handle goes through leather of the back, a good margin from its edge. */
    @ParameterizedTest
    @EnumSource(BeltAttachment.Style.class)
    void theStrapIsRivetedToTheBack(BeltAttachment.Style style) {
        Pattern pattern = with(new BeltAttachment(style, 38, 4), Optional.of(HandleStrap.USUAL));
        Seam.Layer onBack = fastening(pattern, "handle strap rivet").layers().get(1);
        Piece back = piece(pattern, onBack.piece());
        var rivet = back.outline()
                .polygon()
                .getFactory()
                .createPoint(onBack.holes().get(0).coordinate());

        assertThat(back.outline().polygon().contains(rivet)).isTrue();
        assertThat(back.outline().lineString().distance(rivet)).isGreaterThan(6);
        assertThat(back.holes())
                .anyMatch(hole -> hole.use() == Hole.Use.RIVET
                        && hole.centre().equals(onBack.holes().get(0)));
    }

    /** A tail of 11 mm is too narrow for a rivet of 3.8 mm: leather wants two diameters from its middle to the edge. */
    @Test
    void aTailIsWidenedForAStoutRivet() {
        Fastener stout = new Fastener("stout rivet", Hardware.Kind.RIVET, 3.8, 10.5, 3, 16);
        Fastener snap = new Fastener("snap", Hardware.Kind.SNAP, 3.9, 15, 1, 5);
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withStitching(new Stitching(2.5, 3, 0, OptionalDouble.empty()))
                .withHardware(new HardwareList(List.of(stout, snap), List.of()))
                .withStrap(Optional.of(HandleStrap.USUAL));
        Outline box = Outline.polygon(
                List.of(new Point(-110, -5), new Point(100, -5), new Point(100, 5), new Point(-110, 5)));
        Pattern pattern = PatternMaker.make(
                new Knife(
                        box,
                        new Landmarks(new Point(100, 5), new Point(0, -5), new Point(0, 5), new Point(-110, -5)),
                        3,
                        12,
                        CrossSectionShape.usual(0.4)),
                spec);
        Point rivet =
                fastening(pattern, "handle strap rivet").layers().get(1).holes().get(0);
        var cut = piece(pattern, "back").outline().lineString();

        assertThat(pattern.sizes())
                .anyMatch(size -> size.name().equals("width of the belt loop") && size.lengthMm() < 12);
        assertThat(cut.distance(cut.getFactory().createPoint(rivet.coordinate())))
                .isGreaterThanOrEqualTo(2 * 3.8);
    }

    @Test
    void aStrapBesideTheHandleIsRefused() {
        assertThatThrownBy(
                        () -> with(BeltAttachment.USUAL, Optional.of(new HandleStrap(200, HandleStrap.Side.LEFT, 1))))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("strap")
                .hasMessageContaining("above the throat");
    }

    private static Pattern with(BeltAttachment belt, Optional<HandleStrap> strap) {
        return PatternMaker.make(
                TestKnives.dropPoint(),
                TestSpecs.bladeAlone(SheathKind.PANELS).withBelt(belt).withStrap(strap));
    }

    private static Knife roundHandle() {
        Outline box = new Outline(List.of(
                new OutlineNode(new Point(-100, -10), true),
                new OutlineNode(new Point(0, -10), true),
                new OutlineNode(new Point(70, -8), false),
                new OutlineNode(new Point(100, 0), true),
                new OutlineNode(new Point(70, 8), false),
                new OutlineNode(new Point(0, 10), true),
                new OutlineNode(new Point(-100, 10), true)));
        return new Knife(
                box,
                new Landmarks(new Point(100, 0), new Point(0, -10), new Point(0, 10), new Point(-100, -10)),
                3,
                20,
                CrossSectionShape.usual(0.4).withHandleExponent(2));
    }

    private static double length(Pattern pattern, String name) {
        return piece(pattern, name).outline().polygon().getEnvelopeInternal().getHeight();
    }

    private static Piece piece(Pattern pattern, String name) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static PlacedHardware fastening(Pattern pattern, String name) {
        return pattern.fastenings().stream()
                .filter(fastening -> fastening.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
