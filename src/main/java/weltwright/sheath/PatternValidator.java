package weltwright.sheath;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.MeasureUnit;
import weltwright.units.UnitAwareException;

/**
 * The last look at a finished pattern before it is shown or written: can it be cut and sewn as it is drawn?
 *
 * <ol>
 *   <li>Each piece has a name of its own, and its cut is one line that runs counter-clockwise and does not cross
 *       itself.
 *   <li>Each hole lies in its piece, as far from the cut as its use asks.
 *   <li>The stitches of a seam are as long as it says; where they differ from the iron by more than 5 %, the advice
 *       says so.
 *   <li>The layers of a seam or rivet match: where pieces lie flat on each other their holes are as far from one
 *       another; along a main seam they lie at the same length of the row.
 * </ol>
 *
 * <p>Choices that are each allowed may still not go together. A pattern that fails here would spoil leather, so it is
 * refused.
 */
final class PatternValidator {
    private static final Messages TEXTS = Messages.of(PatternValidator.class);

    /** Chords in place of arcs, and cuts drawn with fewer points, take so much at the most. */
    private static final double DRAWN_MM = 0.1;

    /** Of leather between a punched hole and a cut. Common practice; no source. */
    private static final double BESIDE_PUNCHED_MM = 2.4;

    /** Two holes of one stitch may lie so far from each other. */
    private static final double SAME_PLACE_MM = 0.05;

    /** A row is drawn through its holes as exactly as this. */
    private static final double ON_ROW_MM = 1e-3;

    /** The joint of a welt in two leaves so much of a pitch to the nearest hole. */
    private static final double BESIDE_JOINT = 0.3;

    private static final double TOLD_FROM = 0.05;

    private final Pattern pattern;
    private final SheathSpec spec;
    private final Map<String, Piece> pieces = new HashMap<>();

    private PatternValidator(Pattern pattern, SheathSpec spec) {
        this.pattern = pattern;
        this.spec = spec;
    }

    /**
     * Gives the pattern back; throws {@link UserFacingException} that names the choice to change where it cannot be
     * made.
     */
    static Pattern passed(Pattern pattern, SheathSpec spec) {
        PatternValidator check = new PatternValidator(pattern, spec);
        check.names();
        pattern.pieces().forEach(check::cut);
        pattern.pieces().forEach(check::holes);
        pattern.seams().forEach(check::seam);
        for (PlacedHardware fastening : pattern.fastenings()) {
            if (fastening.kind() == Hardware.Kind.RIVET) {
                check.lieFlat(fastening.name(), Remedy.of(fastening.purpose()), fastening.layers());
            }
        }
        return pattern;
    }

    private void names() {
        for (Piece piece : pattern.pieces()) {
            if (pieces.put(piece.name(), piece) != null) {
                throw refused(
                        Remedy.of(piece.kind()),
                        TEXTS.text("pattern-validator.two-different-pieces-would-both", piece.name()));
            }
        }
    }

    private void cut(Piece piece) {
        Polyline outline = piece.outline();
        if (!outline.closed() || !outline.polygon().isValid() || !(outline.signedAreaMm2() > 0)) {
            throw refused(Remedy.of(piece.kind()), TEXTS.text("pattern-validator.the-cut-of-the-would", piece.name()));
        }
    }

    private void holes(Piece piece) {
        Polygon leather = piece.outline().polygon();
        IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(leather);
        IndexedFacetDistance cut = new IndexedFacetDistance(leather.getExteriorRing());
        for (Hole hole : piece.holes()) {
            var centre = hole.centre().coordinate();
            double toCut = cut.distance(leather.getFactory().createPoint(centre));
            boolean inside = locator.locate(centre) == Location.INTERIOR;
            double wanted =
                    hole.use() == Hole.Use.STITCH ? stitchMarginMm(piece) : BESIDE_PUNCHED_MM + hole.diameterMm() / 2;
            if (!inside || toCut < wanted - DRAWN_MM) {
                String use =
                        TEXTS.text("pattern-validator.hole." + hole.use().name().toLowerCase(Locale.ROOT));
                throw refused(
                        hole.use() == Hole.Use.DRAIN ? Remedy.DRAIN : Remedy.of(piece.kind()),
                        unit -> inside
                                ? TEXTS.text(
                                        "pattern-validator.hole-near-cut",
                                        use,
                                        piece.name(),
                                        unit.format(toCut, 1),
                                        unit.format(wanted, 1))
                                : TEXTS.text(
                                        "pattern-validator.hole-outside", use, piece.name(), unit.format(toCut, 1)));
            }
        }
    }

    /** A welt is cut at its inner side, too, and where it is in two between two holes. */
    private double stitchMarginMm(Piece piece) {
        double margin = spec.stitching().marginMm();
        if (piece.kind() != Piece.Kind.WELT) {
            return margin;
        }
        double welt = Math.min(margin, spec.welt().innerMarginMm());
        return spec.welt().inTwo()
                ? Math.min(welt, BESIDE_JOINT * spec.stitching().pitchMm())
                : welt;
    }

    private void seam(Seam seam) {
        Seam.Pitch pitch = seam.pitch();
        boolean told = pattern.advice().stream()
                .anyMatch(a -> a instanceof Advice.PitchFitted fitted && fitted.seam() == seam.kind());
        if (!(pitch.leastMm() > spec.stitching().holeMm())
                || (!(pitch.offBy(spec.stitching().pitchMm()) <= TOLD_FROM) && !told)) {
            throw refused(
                    Remedy.of(seam.kind()),
                    unit -> TEXTS.text(
                            "pattern-validator.the-holes-of-the-would", seam.name(), unit.format(pitch.leastMm(), 2)));
        }
        seam.layers().forEach(layer -> drawn(seam, layer));
        if (seam.closed()) {
            lieFlat(seam.name(), Remedy.of(seam.kind()), seam.layers());
        } else {
            meetAlongTheRow(seam);
        }
    }

    private Piece piece(Seam.Layer layer) {
        return Objects.requireNonNull(pieces.get(layer.piece()), () -> "no piece is called " + layer.piece());
    }

    /** The holes of a seam are holes of the piece. */
    private void drawn(Seam seam, Seam.Layer layer) {
        Set<Point> holes = new HashSet<>();
        piece(layer).holes().forEach(hole -> holes.add(hole.centre()));
        if (!holes.containsAll(layer.holes())) {
            throw refused(
                    Remedy.of(seam.kind()),
                    TEXTS.text("pattern-validator.the-would-lack-holes-of", layer.piece(), seam.name()));
        }
    }

    private void meetAlongTheRow(Seam seam) {
        double[] first = stations(seam, seam.layers().get(0));
        for (Seam.Layer layer : seam.layers()) {
            double[] own = stations(seam, layer);
            for (int i = 0; i < own.length; i++) {
                double partner = first[layer.firstHole() + i] - first[layer.firstHole()];
                if (Math.abs(own[i] - partner) > SAME_PLACE_MM) {
                    throw unmatched(seam.name(), Remedy.of(seam.kind()), layer);
                }
            }
        }
        Seam.Layer last = seam.layers().get(seam.layers().size() - 1);
        if (last.holes().size() != first.length) {
            throw unmatched(seam.name(), Remedy.of(seam.kind()), last);
        }
    }

    /** How far along the row that is drawn on a layer its holes lie. */
    private double[] stations(Seam seam, Seam.Layer layer) {
        List<Point> row = piece(layer).marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_ROW)
                .map(mark -> mark.line().points())
                .filter(points -> points.get(0).distance(layer.holes().get(0)) < ON_ROW_MM)
                .findFirst()
                .orElseThrow(() -> unmatched(seam.name(), Remedy.of(seam.kind()), layer));
        double[] stations = new double[layer.holes().size()];
        double before = 0;
        int k = 0;
        for (int i = 0; i < stations.length; i++) {
            Point hole = layer.holes().get(i);
            double left;
            // On a segment the ways to both its ends make up its length.
            while ((left = hole.distance(row.get(k))
                            + hole.distance(row.get(k + 1))
                            - row.get(k).distance(row.get(k + 1)))
                    > ON_ROW_MM) {
                before += row.get(k).distance(row.get(k + 1));
                k++;
                if (k + 1 == row.size()) {
                    throw unmatched(seam.name(), Remedy.of(seam.kind()), layer);
                }
            }
            stations[i] = before + hole.distance(row.get(k)) - left / 2;
        }
        return stations;
    }

    private void lieFlat(String name, Remedy remedy, List<Seam.Layer> layers) {
        List<Point> first = layers.get(0).holes();
        for (Seam.Layer layer : layers) {
            List<Point> own = layer.holes();
            if (own.size() != first.size()) {
                throw unmatched(name, remedy, layer);
            }
            for (int i = 1; i < own.size(); i++) {
                double toFirst = own.get(i).distance(own.get(0)) - first.get(i).distance(first.get(0));
                double toLast =
                        own.get(i).distance(own.get(i - 1)) - first.get(i).distance(first.get(i - 1));
                if (Math.max(Math.abs(toFirst), Math.abs(toLast)) > SAME_PLACE_MM) {
                    throw unmatched(name, remedy, layer);
                }
            }
        }
    }

    private static UserFacingException unmatched(String name, Remedy remedy, Seam.Layer layer) {
        return refused(remedy, TEXTS.text("pattern-validator.the-holes-of-the-would-not-meet-on", name, layer.piece()));
    }

    private static UserFacingException refused(Remedy remedy, Function<MeasureUnit, String> whatIsWrong) {
        return new UnitAwareException(whatIsWrong, unit -> remedy.words);
    }

    private static UserFacingException refused(Remedy remedy, String whatIsWrong) {
        return new UserFacingException(whatIsWrong, remedy.words);
    }

    /** The choices that put a fault right, by what is at fault. */
    private enum Remedy {
        DRAIN(TEXTS.text("pattern-validator.choose-a-smaller-drain-hole")),
        HANDLE_STRAP(TEXTS.text("pattern-validator.choose-a-wider-strap-round")),
        BELT(TEXTS.text("pattern-validator.choose-another-belt-loop-less")),
        WELT(TEXTS.text("pattern-validator.choose-a-smaller-stitch-margin")),
        BODY(TEXTS.text("pattern-validator.choose-a-smaller-stitch-margin-or-pitch-fewer"));

        private final String words;

        Remedy(String words) {
            this.words = words;
        }

        static Remedy of(Piece.Kind piece) {
            return switch (piece) {
                case BODY, FACE, BACK, RIVET_COVER -> BODY;
                case WELT -> WELT;
                case BELT_STRAP, RING_STRAP -> BELT;
                case HANDLE_STRAP -> HANDLE_STRAP;
            };
        }

        static Remedy of(Seam.Kind seam) {
            return switch (seam) {
                case WELT_SEAM -> BODY;
                case BELT_LOOP, BELT_STRAP -> BELT;
            };
        }

        static Remedy of(PlacedHardware.Purpose hardware) {
            return switch (hardware) {
                case BELT_STRAP_RIVETS, RING_STRAP_RIVETS, RING -> BELT;
                case HANDLE_STRAP_RIVET, HANDLE_STRAP_SNAP -> HANDLE_STRAP;
                case DRAIN_EYELETS -> DRAIN;
            };
        }
    }
}
