package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;
import weltwright.sheath.stitch.IronPlacement;

/** What holds of the holes of every sheath, whatever the knife and the choices. */
class HolesPropertiesTest implements RandomSheaths {
    /** Of properties that make a pattern anew. */
    private static final int TRIES = 30;

    @Property
    void everyStitchHoleKeepsItsMargin(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        for (Piece piece : sheath.pattern().pieces()) {
            Geometry leather = piece.outline().polygon();
            for (Hole hole : piece.holes()) {
                Geometry centre = leather.getFactory().createPoint(hole.centre().coordinate());
                assertThat(leather.covers(centre)).isTrue();
                if (hole.use() == Hole.Use.STITCH) {
                    assertThat(leather.getBoundary().distance(centre))
                            .as("%s at %s", piece.name(), hole.centre())
                            .isGreaterThanOrEqualTo(
                                    Math.min(spec.stitching().marginMm(), innerMargin(piece, spec)) - 0.1);
                }
            }
        }
    }

    /**
     * The welt is cut away at its inner edge too, by its own margin; where it is in two, the joint runs between holes.
     */
    private static double innerMargin(Piece piece, SheathSpec spec) {
        if (piece.kind() != Piece.Kind.WELT) {
            return spec.stitching().marginMm();
        }
        return piece.name().contains("part")
                ? spec.stitching().pitchMm() / 2 - 0.2
                : spec.welt().innerMarginMm();
    }

    @Property
    void everyHoleHasItsPartnerAtTheSameArcLengthOnEveryLayer(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        Seam seam = pattern.seams().get(0);

        assertThat(seam.layers().get(0).holes()).hasSize(seam.holeCount());
        assertThat(seam.layers().get(seam.layers().size() - 1).holes()).hasSize(seam.holeCount());
        double[] stations = stations(pattern, seam.layers().get(0));
        for (Seam.Layer layer : seam.layers()) {
            double[] own = stations(pattern, layer);
            for (int i = 0; i < own.length; i++) {
                assertThat(own[i])
                        .as("hole %d of %s %s", i, layer.piece(), layer.part())
                        .isCloseTo(stations[layer.firstHole() + i] - stations[layer.firstHole()], within(0.01));
            }
        }
    }

    /** How far along the row that is drawn on a layer its holes are; each of them stands on it. */
    private static double[] stations(Pattern pattern, Seam.Layer layer) {
        Polyline row = rowThrough(pattern, layer);
        double[] stations = layer.holes().stream().mapToDouble(row::stationOf).toArray();
        for (int i = 0; i < stations.length; i++) {
            assertThat(row.at(stations[i]).distance(layer.holes().get(i))).isLessThan(0.01);
        }
        return stations;
    }

    /** Where the holes are struck from, each setting of an iron has its tick beside its first hole; and there alone. */
    @Property
    void theIronsAreMarkedWhereTheyAreSet(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        for (Piece piece : pattern.pieces()) {
            List<Point> firsts = pattern.seams().stream()
                    .flatMap(seam -> seam.layers().stream()
                            .filter(layer -> layer.piece().equals(piece.name()) && layer.chiselled())
                            .flatMap(layer -> IronPlacement.of(layer.holes(), seam.closed()).stream()
                                    .map(step -> layer.holes().get(step.first()))))
                    .toList();
            List<Polyline> ticks = piece.marks().stream()
                    .filter(mark -> mark.kind() == Mark.Kind.IRON)
                    .map(Mark::line)
                    .toList();
            assertThat(ticks).as(piece.name()).hasSameSizeAs(firsts);
            for (Polyline tick : ticks) {
                assertThat(firsts)
                        .anyMatch(first -> Math.abs(first.distance(tick.points().get(0)) - 1) < 1e-6);
                assertThat(piece.outline().polygon().covers(tick.lineString()))
                        .as(piece.name())
                        .isTrue();
            }
        }
    }

    /** What is laid on another piece has its holes in the same places to one another: every hole has its partner. */
    @Property
    void whatIsLaidOnHasTheSameHoles(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<List<Seam.Layer>> patches = new ArrayList<>();
        pattern.seams().stream().skip(1).forEach(seam -> patches.add(seam.layers()));
        pattern.fastenings().stream()
                .filter(fastening -> fastening.kind() == Hardware.Kind.RIVET)
                .forEach(fastening -> patches.add(fastening.layers()));
        for (List<Seam.Layer> layers : patches) {
            List<Point> first = layers.get(0).holes();
            for (Seam.Layer layer : layers) {
                assertThat(layer.holes()).hasSameSizeAs(first);
                for (int i = 0; i < first.size(); i++) {
                    for (int k = 0; k < i; k++) {
                        assertThat(layer.holes().get(i).distance(layer.holes().get(k)))
                                .isCloseTo(first.get(i).distance(first.get(k)), within(0.01));
                    }
                }
            }
        }
    }

    @Property
    void theHolesOfThePiecesAreThoseOfTheSeams(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        for (Piece piece : pattern.pieces()) {
            List<Point> sewn = pattern.seams().stream()
                    .flatMap(seam -> seam.layers().stream())
                    .filter(layer -> layer.piece().equals(piece.name()))
                    .flatMap(layer -> layer.holes().stream())
                    .toList();
            List<Point> holes = piece.holes().stream()
                    .filter(hole -> hole.use() == Hole.Use.STITCH)
                    .map(Hole::centre)
                    .toList();

            assertThat(holes).containsExactlyInAnyOrderElementsOf(sewn);
        }
    }

    /** Equal but where a corner parts the row; and then still of about the length of the iron. */
    @Property
    void thePitchIsTheNearestThatDividesTheRow(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        Seam seam = pattern.seams().get(0);
        double[] stations = stations(pattern, seam.layers().get(0));
        double wished = spec.stitching().pitchMm();
        int stitches = seam.stitchCount();
        assertThat(stitches * seam.pitchMm()).isCloseTo(stations[stitches], within(0.01));
        boolean parted = false;
        for (int i = 1; i <= stitches; i++) {
            double stitch = stations[i] - stations[i - 1];
            assertThat(stitch).isBetween(0.6 * wished, 1.5 * wished);
            parted |= Math.abs(stitch - seam.pitchMm()) > 1e-4;
        }
        if (!parted) {
            assertThat(stations[stitches] / wished).isBetween(stitches - 0.5, stitches + 0.5);
        }
    }

    /**
     * A stitch that bridged a corner would lie over the knife, from which the row keeps the welt's inner margin: so a
     * stitch must leave the row by less than that. Round the tip of a narrow knife a row turns by more than 120° within
     * two stitches, and no hole in the middle can keep both of them near it.
     */
    @Property(tries = TRIES)
    void noStitchCutsACornerOff(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        double innerMarginMm = 1.5;
        WeltSpec narrow = new WeltSpec(
                spec.welt().layers(),
                innerMarginMm,
                spec.welt().leathersMm(),
                spec.welt().inTwo());
        Pattern pattern = MadeSheath.of(knife, spec.withWelt(narrow));
        Seam.Layer layer = pattern.seams().get(0).layers().get(0);
        Polyline row = rowThrough(pattern, layer);
        for (int i = 1; i < layer.holes().size(); i++) {
            Point middle = layer.holes().get(i - 1).towards(layer.holes().get(i), 0.5);
            assertThat(row.at(row.stationOf(middle)).distance(middle)).isLessThan(innerMarginMm);
        }
    }

    @Property
    void waterCanLeaveAndCutsNoStitch(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        for (Piece piece : pattern.pieces()) {
            List<Hole> drains = piece.holes().stream()
                    .filter(hole -> hole.use() == Hole.Use.DRAIN)
                    .toList();
            boolean drained = !spec.drain().equals(DrainHole.NONE)
                    && List.of("body", "face", "back").contains(piece.name());
            assertThat(drains).hasSize(!drained ? 0 : piece.kind() == Piece.Kind.BODY ? 2 : 1);
            for (Hole drain : drains) {
                for (Hole stitch : piece.holes()) {
                    if (stitch != drain && stitch.use() == Hole.Use.STITCH) {
                        assertThat(drain.centre().distance(stitch.centre()) - drain.diameterMm() / 2)
                                .isGreaterThanOrEqualTo(spec.welt().innerMarginMm() - 0.1);
                    }
                }
            }
        }
    }

    /** Common practice: no hole so near another, or an edge, that the leather between would tear out. */
    @Property(tries = TRIES)
    void noHoleIsTornOut(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : MadeSheath.of(knife, spec.withStrap(Optional.of(HandleStrap.USUAL)))
                .pieces()) {
            Geometry leather = piece.outline().polygon();
            for (int i = 0; i < piece.holes().size(); i++) {
                Hole hole = piece.holes().get(i);
                double radius = hole.diameterMm() / 2;
                Geometry centre = leather.getFactory().createPoint(hole.centre().coordinate());
                if (hole.use() != Hole.Use.STITCH) {
                    assertThat(leather.covers(centre)).isTrue();
                    assertThat(leather.getBoundary().distance(centre) - radius)
                            .as("%s at %s of %s", hole.use(), hole.centre(), piece.name())
                            .isGreaterThanOrEqualTo(2.4);
                }
                for (Hole other : piece.holes().subList(0, i)) {
                    assertThat(other.centre().distance(hole.centre()) - radius - other.diameterMm() / 2)
                            .as("%s and %s in %s", hole, other, piece.name())
                            .isGreaterThanOrEqualTo(1.2);
                }
            }
        }
    }

    private static Polyline rowThrough(Pattern pattern, Seam.Layer layer) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(layer.piece()))
                .flatMap(piece -> piece.marks().stream())
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_ROW)
                .map(Mark::line)
                .filter(row -> row.points().get(0).distance(layer.holes().get(0)) < 0.01)
                .findFirst()
                .orElseThrow();
    }
}
