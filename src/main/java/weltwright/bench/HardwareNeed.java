package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.sheath.Fastening;
import weltwright.sheath.Hole;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;
import weltwright.sheath.Seam;

/**
 * Hardware of one kind in one place of a sheath.
 *
 * @param name what it is for: "belt strap rivets"
 * @param kind rivets, snap or ring
 * @param count how many
 * @param choice which to take, by its name in the list at hand; empty where the list has none
 * @param holeMm diameter of the punch; 0 for a ring
 * @param throughMm of leather that it holds; of a snap, the thicker of the layers that its halves are set in
 * @param warnings plain sentences: too thick, too thin, too near
 */
public record HardwareNeed(
        String name,
        Fastening.Kind kind,
        int count,
        Optional<String> choice,
        double holeMm,
        double throughMm,
        List<String> warnings) {

    public HardwareNeed {
        warnings = List.copyOf(warnings);
    }

    static List<HardwareNeed> of(Pattern pattern, HardwareList atHand) {
        return pattern.fastenings().stream()
                .map(fastening -> switch (fastening.kind()) {
                    case RING -> ring(fastening, atHand);
                    case RIVET -> fastener(
                            fastening, Fastener.Kind.RIVET, fastening.stackMm(), pattern.pieces(), atHand);
                    case SNAP -> fastener(fastening, Fastener.Kind.SNAP, thickestLayer(fastening), pattern.pieces(), atHand);
                })
                .toList();
    }

    private static HardwareNeed ring(Fastening fastening, HardwareList atHand) {
        Optional<Ring> ring = atHand.ringFor(fastening.widthMm());
        List<String> warnings = ring.isPresent()
                ? List.of()
                : List.of(Words.text(
                        "No ring in the list is %.0f mm wide inside, as the %s wants.",
                        fastening.widthMm(), fastening.name()));
        return new HardwareNeed(
                fastening.name(), fastening.kind(), 1, ring.map(Ring::name), 0, fastening.stackMm(), warnings);
    }

    private static HardwareNeed fastener(
            Fastening fastening, Fastener.Kind kind, double throughMm, List<Piece> pieces, HardwareList atHand) {
        double hole = holeMm(fastening, pieces);
        Optional<Fastener> choice = atHand.choose(kind, hole, throughMm);
        List<String> warnings = new ArrayList<>();
        choice.flatMap(fastener -> fastener.gripWarning(throughMm)).ifPresent(warnings::add);
        for (Seam.Layer layer : fastening.layers()) {
            Piece piece = piece(layer, pieces);
            choice.ifPresent(fastener -> HoleSpacing.warnings(piece, fastener, layer.holes()).stream()
                    .filter(warning -> !warnings.contains(warning))
                    .forEach(warnings::add));
        }
        if (choice.isEmpty()) {
            warnings.add("The list has nothing for the " + fastening.name() + ".");
        }
        return new HardwareNeed(
                fastening.name(),
                fastening.kind(),
                fastening.count(),
                choice.map(Fastener::name),
                hole,
                throughMm,
                warnings);
    }

    private static double thickestLayer(Fastening fastening) {
        return fastening.layers().stream().mapToDouble(Seam.Layer::thicknessMm).max().orElse(0);
    }

    private static double holeMm(Fastening fastening, List<Piece> pieces) {
        Seam.Layer layer = fastening.layers().get(0);
        Point centre = layer.holes().get(0);
        return piece(layer, pieces).holes().stream()
                .filter(hole -> hole.centre().distance(centre) < 1e-6)
                .mapToDouble(Hole::diameterMm)
                .findFirst()
                .orElseThrow();
    }

    private static Piece piece(Seam.Layer layer, List<Piece> pieces) {
        return pieces.stream()
                .filter(piece -> piece.name().equals(layer.piece()))
                .findFirst()
                .orElseThrow();
    }
}
