package weltwright.bench;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import weltwright.sheath.Fastening;
import weltwright.sheath.Hardware;
import weltwright.sheath.Seam;

/** How pieces come together: glue, stitches and hardware, and which of them has to be done before which. */
final class JoinWork {
    private final Work work;

    JoinWork(Work work) {
        this.work = work;
    }

    void glueAndStitch(Join join) {
        Seam seam = join.seam().orElseThrow();
        Operation glue = work.add(Step.GLUE, Gluing.of(join), join.pieceNames(), "contact cement", "");
        Operation stitch = work.add(
                Step.STITCH,
                String.format(Locale.ROOT, "Sew the %s: %d stitches, and %d back at each end",
                        join.name(), seam.stitchCount(), seam.backStitches()),
                join.pieceNames(),
                "two needles, awl",
                Words.text("thread of %.1f m", new SaddleStitch(seam).metresToCut()));
        join(join.name(), join.pieceNames(), glue, "the holes are punched while the leather lies flat");
        work.fixings.put(join.name(), stitch);
        work.after(glue, stitch, "glue holds the holes over one another");
    }

    void setHardware(Fastening fastening) {
        List<String> names = fastening.layers().stream().map(Seam.Layer::piece).distinct().toList();
        String on = Words.and(names.stream().map(name -> "the " + name).toList());
        Operation operation = switch (fastening.kind()) {
            case RIVET -> work.add(
                    Step.RIVET,
                    "Set the " + counted(fastening) + " through " + on,
                    names,
                    "setter, anvil",
                    Words.text("through %.1f mm", fastening.stackMm()));
            case SNAP -> work.add(Step.RIVET, "Set the halves of the " + fastening.name() + " in " + on, names,
                    "snap setter", "");
            case EYELET -> work.add(
                    Step.RIVET, "Set the " + counted(fastening) + " in " + on, names, "eyelet setter", "");
            case RING -> work.add(Step.RIVET, "Put the ring into " + on, names, "by hand",
                    fastening.hardware().name());
        };
        join(fastening.name(), names, operation, "the post needs its hole");
        work.fixings.put(fastening.name(), operation);
    }

    private static String counted(Fastening fastening) {
        return fastening.count() == 1 ? fastening.name() : fastening.count() + " " + fastening.name();
    }

    private void join(String name, List<String> pieces, Operation closing, String whyPunched) {
        work.closings.put(name, closing);
        for (String piece : pieces) {
            work.after(work.cuts.get(piece), closing, "what is not cut cannot be joined");
            work.after(work.prepared.get(piece), closing, "the marks say where it is laid");
            work.punches.get(piece).forEach(punch -> work.after(punch, closing, whyPunched));
        }
    }

    /**
     * Neither needle nor anvil gets behind the outer layers of a closed stack, or between a piece and its own folded end; and
     * a ring goes into a strap before the strap is closed.
     */
    void patchesBeforeWhatClosesOverThem() {
        for (Fastening fastening : work.pattern.fastenings()) {
            for (Join join : work.joins) {
                boolean shared = fastening.layers().stream().anyMatch(layer -> join.joins(layer.piece()));
                boolean closesOver = join.stack() || join.seam().isPresent() && join.fold().isPresent();
                if (shared && (closesOver || fastening.kind() == Hardware.Kind.RING)) {
                    work.after(
                            work.fixings.get(fastening.name()),
                            work.closings.get(join.name()),
                            "it cannot be got at once the " + join.name() + " is closed");
                }
            }
        }
        for (Join patch : work.joins) {
            for (Join stack : work.joins) {
                if (!patch.stack() && stack.stack() && patch.pieceNames().stream().anyMatch(stack::joins)) {
                    work.after(
                            work.fixings.get(patch.name()),
                            work.closings.get(stack.name()),
                            "no needle gets inside once the " + stack.name() + " is closed");
                }
            }
        }
    }
}
