package weltwright.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.units.MeasureUnit;

/**
 * Checks the distances of holes for hardware from one another, from other holes and from the edges of a piece.
 *
 * <p>Two fasteners of one kind need {@link Fastener#leastApartMm}; caps of different ones must not touch, nor must a
 * cap lie on a stitch or another hole.
 */
final class HoleSpacing {
    private static final Messages TEXTS = Messages.of(HoleSpacing.class);

    /** Least distance beside a cap for it to lie flat. Common practice. */
    private static final double CLEARANCE_MM = 1;

    private final Pattern pattern;
    private final MeasureUnit unit;

    /** @param unit of lengths in the sentences */
    HoleSpacing(Pattern pattern, MeasureUnit unit) {
        this.unit = unit;
        this.pattern = pattern;
    }

    /**
     * Returns sentences for one fastener: for each piece at most one on the nearest other hole and one on the nearest
     * edge.
     */
    List<String> warnings(PlacedHardware fastening, Fastener fastener) {
        List<String> warnings = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            List<Point> own = centres(fastening, piece);
            if (!own.isEmpty()) {
                edge(piece, fastener, own).ifPresent(warnings::add);
                nearest(piece, fastener, own).ifPresent(warnings::add);
            }
        }
        return warnings;
    }

    private static List<Point> centres(PlacedHardware fastening, Piece piece) {
        return fastening.layers().stream()
                .filter(layer -> layer.piece().equals(piece.name()))
                .map(Seam.Layer::holes)
                .flatMap(List::stream)
                .toList();
    }

    private Optional<String> edge(Piece piece, Fastener fastener, List<Point> own) {
        Geometry cut = piece.outline().lineString();
        double least = own.stream()
                .mapToDouble(p -> cut.distance(cut.getFactory().createPoint(p.coordinate())))
                .min()
                .orElseThrow();
        return least >= fastener.leastToEdgeMm() - 1e-6
                ? Optional.empty()
                : Optional.of(TEXTS.text(
                        "hole-spacing.in-the-a-hole-for",
                        piece.name(),
                        fastener.words(),
                        unit.format(least, 1),
                        unit.format(fastener.leastToEdgeMm(), 1)));
    }

    private Optional<String> nearest(Piece piece, Fastener fastener, List<Point> own) {
        double lacking = 0;
        String words = null;
        for (Point centre : own) {
            for (Hole other : piece.holes()) {
                double apart = other.centre().distance(centre);
                boolean alike = own.stream().anyMatch(p -> p.distance(other.centre()) < 1e-6);
                double wanted =
                        alike ? fastener.leastApartMm() : fastener.capMm() / 2 + reachMm(piece, other) + CLEARANCE_MM;
                if (apart > 1e-6 && wanted - apart > lacking + 1e-6) {
                    lacking = wanted - apart;
                    words = TEXTS.text(
                            alike ? "hole-spacing.two-alike" : "hole-spacing.beside-another",
                            piece.name(),
                            fastener.words(),
                            unit.format(apart, 1),
                            unit.format(wanted, 1));
                }
            }
        }
        return Optional.ofNullable(words);
    }

    /** Returns the radius of the cap in a hole, or of the hole itself. */
    private double reachMm(Piece piece, Hole hole) {
        return pattern.fastenings().stream()
                .filter(fastening -> fastening.hardware() instanceof Fastener)
                .filter(fastening -> centres(fastening, piece).stream().anyMatch(p -> p.distance(hole.centre()) < 1e-6))
                .mapToDouble(fastening -> ((Fastener) fastening.hardware()).capMm() / 2)
                .findFirst()
                .orElse(hole.diameterMm() / 2);
    }
}
