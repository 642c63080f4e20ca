package weltwright.layout.cost;

import java.math.BigDecimal;
import java.util.Map;
import java.util.TreeMap;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.HardwareRequirement;
import weltwright.assembly.SaddleStitch;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Seam;

/**
 * What one sheath takes.
 *
 * @param leatherMm2 area of its pieces, without offcuts; 0 where the leather has a price already
 * @param hardware how many of each kind, by name
 * @param threadM length of thread to cut
 * @param benchMinutes of work
 */
public record SheathNeeds(double leatherMm2, Map<String, Integer> hardware, double threadM, int benchMinutes) {

    public SheathNeeds {
        hardware = Map.copyOf(hardware);
    }

    /**
     * The needs of one sheath whose leather has a price already, as where its parts come from several stocks.
     *
     * @see SheathCost#of(SheathNeeds, BigDecimal, PriceList)
     */
    public static SheathNeeds besidesLeather(Pattern pattern) {
        return of(0, pattern);
    }

    /** The needs of a sheath that is not laid out: of leather, what is in its pieces. */
    public static SheathNeeds withoutOffcuts(Pattern pattern) {
        double pieces = pattern.pieces().stream()
                .mapToDouble(piece -> piece.count() * Math.abs(piece.outline().signedAreaMm2()))
                .sum();
        return of(pieces, pattern);
    }

    private static SheathNeeds of(double leatherMm2, Pattern pattern) {
        AssemblyPlan plan = AssemblyPlan.of(pattern);
        Map<String, Integer> hardware = new TreeMap<>();
        for (HardwareRequirement need : plan.hardware()) {
            hardware.merge(need.hardware().name(), need.count(), Integer::sum);
        }
        double thread = 0;
        for (Seam seam : pattern.seams()) {
            thread += new SaddleStitch(seam).metresToCut();
        }
        return new SheathNeeds(leatherMm2, hardware, thread, plan.order().time().benchMinutes());
    }
}
