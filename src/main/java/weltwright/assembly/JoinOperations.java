package weltwright.assembly;

import static weltwright.assembly.AssemblyText.and;
import static weltwright.assembly.AssemblyText.the;
import static weltwright.assembly.OperationKind.GLUE;
import static weltwright.assembly.OperationKind.RIVET;
import static weltwright.assembly.OperationKind.ROUGHEN;
import static weltwright.assembly.OperationKind.STITCH;
import static weltwright.assembly.WorkPhase.JOIN;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;

/** Adds the operations that join pieces, with glue, stitches and hardware, and their constraints. */
final class JoinOperations {
    private static final Messages TEXTS = Messages.of(JoinOperations.class);

    private final OperationCollector work;

    JoinOperations(OperationCollector work) {
        this.work = work;
    }

    void all() {
        work.joins.stream().filter(join -> join.seam().isPresent()).forEach(this::glueAndStitch);
        work.pattern.fastenings().forEach(this::setHardware);
        patchesBeforeWhatClosesOverThem();
        work.pattern.fastenings().stream().filter(PlacedHardware::covered).forEach(this::cover);
    }

    private void glueAndStitch(Join join) {
        Seam seam = join.seam().orElseThrow();
        SeamTools tools = new SeamTools(seam);
        Operation glue = work.add(Operation.of(JOIN, GLUE, join.pieceNames(), Gluing.of(join))
                .with(TEXTS.text("join-operations.contact-cement"), Gluing.reach(join, work.unit))
                .noting(Gluing.HOW)
                .taking(8)
                .thenWaiting(WaitingTimes.CEMENT_DRIES_MIN));
        int sewn = seam.stitchCount() + 2 * seam.stitching().backStitches();
        Operation stitch = work.add(Operation.of(
                        JOIN,
                        STITCH,
                        join.pieceNames(),
                        TEXTS.text(
                                "join-operations.sew-the-stitches-and-back",
                                join.name(),
                                seam.stitchCount(),
                                seam.stitching().backStitches()))
                .with(
                        TEXTS.text(
                                "join-operations.2-needles-awl",
                                tools.needle(),
                                work.unit.format(tools.awlWidthMm(), 1)),
                        TEXTS.text(
                                "join-operations.m-of-mm-thread",
                                new SaddleStitch(seam).metresToCut(),
                                tools.threadMm()))
                .taking(WorkRate.SEW_STITCHES.minutes(sewn)));
        join(join.name(), join.pieceNames(), glue, TEXTS.text("join-operations.the-holes-are-punched-while"));
        work.fixings.put(join.name(), stitch);
        work.after(glue, stitch, TEXTS.text("join-operations.glue-holds-the-holes-over"));
    }

    /** Adds roughening, since glue holds on flesh and on roughened grain only. */
    void roughen() {
        Set<String> pieces = new LinkedHashSet<>();
        List<String> faces = new ArrayList<>();
        for (Join join : work.joins) {
            if (join.seam().isPresent()) {
                faces.addAll(Gluing.grainFaces(join));
                Gluing.piecesWithGrainFaces(join).forEach(pieces::add);
            }
        }
        if (faces.isEmpty()) {
            return;
        }
        Operation roughen = work.add(Operation.of(
                        JOIN,
                        ROUGHEN,
                        List.copyOf(pieces),
                        TEXTS.text(
                                "join-operations.roughen-the-grain-where-it",
                                and(faces.stream().distinct().toList())))
                .with(TEXTS.text("join-operations.coarse-paper"), TEXTS.text("join-operations.grit-80"))
                .taking(2 + 2 * faces.size()));
        for (String piece : pieces) {
            work.after(work.prepared(piece), roughen, TEXTS.text("join-operations.the-marks-say-where"));
            work.flat
                    .getOrDefault(piece, Set.of())
                    .forEach(done -> work.after(done, roughen, TEXTS.text("join-operations.a-rough-grain-drinks-dye")));
            if (work.folds.containsKey(piece)) {
                work.after(work.folds.get(piece), roughen, TEXTS.text("join-operations.water-smooths-the-grain-again"));
            }
        }
        for (Join join : work.joins) {
            if (join.seam().isPresent() && !Gluing.grainFaces(join).isEmpty()) {
                work.after(roughen, work.closing(join.name()), TEXTS.text("join-operations.glue-does-not-hold-on"));
            }
        }
    }

    private void setHardware(PlacedHardware fastening) {
        List<String> names =
                fastening.layers().stream().map(Seam.Layer::piece).distinct().toList();
        String on = the(names);
        Operation operation = work.add(
                switch (fastening.kind()) {
                    case RIVET ->
                        Operation.of(
                                        JOIN,
                                        RIVET,
                                        names,
                                        TEXTS.text(
                                                fastening.covered()
                                                        ? "join-operations.set-the-through-heads-inside"
                                                        : "join-operations.set-the-through",
                                                counted(fastening),
                                                on))
                                .with(
                                        TEXTS.text("join-operations.setter-anvil"),
                                        TEXTS.text("join-operations.through", work.unit.format(fastening.stackMm(), 1)))
                                .noting(TEXTS.text("join-operations.wear-glasses"))
                                .taking(2 + 2.0 * fastening.count());
                    case SNAP ->
                        fastening.setOnTheKnife().isPresent()
                                ? firstHalf(fastening)
                                : Operation.of(
                                                JOIN,
                                                RIVET,
                                                names,
                                                TEXTS.text("join-operations.set-the-in", fastening.name(), on))
                                        .with(TEXTS.text("join-operations.snap-setter"), "")
                                        .taking(5);
                    case EYELET ->
                        Operation.of(
                                        JOIN,
                                        RIVET,
                                        names,
                                        TEXTS.text("join-operations.set-the-in", counted(fastening), on))
                                .with(TEXTS.text("join-operations.eyelet-setter"), "")
                                .taking(2 + 2.0 * fastening.count());
                    case RING ->
                        Operation.of(JOIN, RIVET, names, TEXTS.text("join-operations.put-the-ring-into", on))
                                .with(
                                        TEXTS.text("join-operations.by-hand"),
                                        fastening.hardware().words())
                                .taking(1);
                });
        join(fastening.name(), names, operation, TEXTS.text("join-operations.the-post-needs-its-hole"));
        work.fixings.put(fastening.name(), operation);
    }

    private static Operation firstHalf(PlacedHardware snap) {
        Seam.Layer stud = snap.layers().get(snap.layers().size() - 1);
        return Operation.of(
                        JOIN,
                        RIVET,
                        List.of(stud.piece()),
                        TEXTS.text("join-operations.set-the-stud-of-the", snap.name(), stud.piece()))
                .with(TEXTS.text("join-operations.snap-setter"), "")
                .taking(5);
    }

    private static String counted(PlacedHardware fastening) {
        return fastening.count() == 1 ? fastening.name() : fastening.count() + " " + fastening.name();
    }

    private void join(String name, List<String> pieces, Operation closing, String whyPunched) {
        work.closings.put(name, closing);
        for (String piece : pieces) {
            work.after(work.cut(piece), closing, TEXTS.text("join-operations.what-is-not-cut-cannot"));
            work.after(work.prepared(piece), closing, TEXTS.text("join-operations.the-marks-say-where-it"));
            work.punches(piece).forEach(punch -> work.after(punch, closing, whyPunched));
            if (work.folds.containsKey(piece)) {
                work.after(work.folds.get(piece), closing, TEXTS.text("join-operations.damp-leather-takes-no-glue"));
            }
        }
    }

    /**
     * Constrains patches and hardware to come before the joins that close over them: a closed stack and a folded end
     * cannot be reached from inside, and a ring goes into a strap before the strap is closed.
     */
    private void patchesBeforeWhatClosesOverThem() {
        for (PlacedHardware fastening : work.pattern.fastenings()) {
            for (Join join : work.joins) {
                boolean shared = fastening.layers().stream().anyMatch(layer -> join.joins(layer.piece()));
                boolean closesOver =
                        join.stack() || (join.seam().isPresent() && join.fold().isPresent());
                if (shared && (closesOver || fastening.kind() == Hardware.Kind.RING)) {
                    work.after(
                            work.fixing(fastening.name()),
                            work.closing(join.name()),
                            TEXTS.text("join-operations.it-cannot-be-got-at", join.name()));
                }
            }
        }
        for (Join patch : work.joins) {
            for (Join stack : work.joins) {
                if (!patch.stack()
                        && stack.stack()
                        && patch.pieceNames().stream().anyMatch(stack::joins)) {
                    work.after(
                            work.fixing(patch.name()),
                            work.closing(stack.name()),
                            TEXTS.text("join-operations.no-needle-gets-inside-once", stack.name()));
                }
            }
        }
    }

    /** Glues the rivet cover over the heads inside, after they are set and before the sheath is closed. */
    private void cover(PlacedHardware fastening) {
        String cover = Piece.Kind.RIVET_COVER.words();
        Operation glue = work.add(Operation.of(
                        JOIN,
                        GLUE,
                        List.of(cover),
                        TEXTS.text("join-operations.glue-the-over-the-heads", cover, fastening.name()))
                .with(TEXTS.text("join-operations.contact-cement"), TEXTS.text("join-operations.both-faces-all-over"))
                .taking(3)
                .thenWaiting(WaitingTimes.CEMENT_DRIES_MIN));
        work.after(work.prepared(cover), glue, TEXTS.text("join-operations.it-is-cut-and-skived"));
        work.after(work.fixing(fastening.name()), glue, TEXTS.text("join-operations.it-lies-over-the-heads"));
        for (Join join : work.joins) {
            if (join.stack() && join.joins(fastening.layers().get(0).piece())) {
                work.after(glue, work.closing(join.name()), TEXTS.text("join-operations.it-lies-inside"));
            }
        }
    }
}
