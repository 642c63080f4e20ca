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

/** Measures the thickness along the knife from a second photo, in which the knife stands on its spine or edge. */
public final class ThicknessPhotoAction {
    private static final String CAUTION =
            "<html><p width=420>Tape the knife's edge and point first. Stand it upright on"
                    + " the same ground as before, held by one or two low blocks at the handle, and photograph it from straight"
                    + " above. What does it stand on?</p></html>";

    private final JobModel model;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final Consumer<String> notifier;

    public ThicknessPhotoAction(JobModel model, TaskQueue tasks, FileDialogs dialogs, Consumer<String> notifier) {
        this.model = model;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
    }

    /** Explains how to take the photo, asks for it, and stores the measured thickness in the job. */
    void choosePhoto() {
        Optional<StandingPose.Foot> foot = dialogs.askChoice(
                        "Thickness from a second photo", CAUTION, "Its spine", "Its edge", "Cancel")
                .filter(answer -> answer < StandingPose.Foot.values().length)
                .map(answer -> answer == 0 ? StandingPose.Foot.SPINE : StandingPose.Foot.EDGE);
        foot.flatMap(f -> dialogs.choosePhoto("Open a photo of the knife standing"))
                .ifPresent(file -> measure(file, foot.get()));
    }

    void measure(Path file, StandingPose.Foot foot) {
        Job job = model.job();
        notifier.accept("");
        tasks.submit(new BackgroundTask<ThicknessProfile>() {
            @Override
            public String title() {
                return "Measuring the thickness";
            }

            @Override
            public ThicknessProfile doInBackground(ProgressListener progress) {
                return ThicknessTracer.trace(Photo.read(file), job.settings().elsewhere(), job.knife(), foot, progress);
            }

            @Override
            public void succeeded(ThicknessProfile profile) {
                model.change(now -> now.withSettings(now.settings().withThickness(profile)));
            }
        });
    }
}
