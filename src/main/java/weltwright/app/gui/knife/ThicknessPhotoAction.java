package weltwright.app.gui.knife;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.StandingPose;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.ProgressListener;
import weltwright.trace.thickness.ThicknessTracer;

/** Measures the thickness along the knife from a second photo, in which the knife stands upright. */
public final class ThicknessPhotoAction {
    private static final String CAUTION =
            "<html><p width=420>Tape the knife's edge and point first. Stand it upright on"
                    + " the same ground as before, held by one or two low blocks at the handle, and photograph it from straight"
                    + " above. What does it stand on?</p></html>";

    private final JobModel bench;
    private final TaskQueue work;
    private final FileDialogs asker;
    private final Consumer<String> notice;

    public ThicknessPhotoAction(JobModel bench, TaskQueue work, FileDialogs asker, Consumer<String> notice) {
        this.bench = bench;
        this.work = work;
        this.asker = asker;
        this.notice = notice;
    }

    /** Tells how to take the photo, asks for it, and puts what it shows into the job. */
    void ask() {
        Optional<StandingPose.Foot> foot = asker.choice(
                        "Thickness from a second photo", CAUTION, "Its spine", "Its edge", "Cancel")
                .filter(answer -> answer < StandingPose.Foot.values().length)
                .map(answer -> answer == 0 ? StandingPose.Foot.SPINE : StandingPose.Foot.EDGE);
        foot.flatMap(f -> asker.toOpenPhoto("Open a photo of the knife standing"))
                .ifPresent(file -> measure(file, foot.get()));
    }

    void measure(Path file, StandingPose.Foot foot) {
        Job job = bench.job();
        notice.accept("");
        work.start(new BackgroundTask<ThicknessProfile>() {
            @Override
            public String title() {
                return "Measuring the thickness";
            }

            @Override
            public ThicknessProfile work(ProgressListener progress) {
                return ThicknessTracer.trace(Photo.read(file), job.settings().elsewhere(), job.knife(), foot, progress);
            }

            @Override
            public void done(ThicknessProfile profile) {
                bench.change(now -> now.withSettings(now.settings().withThickness(profile)));
            }
        });
    }
}
