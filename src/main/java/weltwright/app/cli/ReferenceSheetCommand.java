package weltwright.app.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.output.print.SheetPdf;

@Command(
        name = "sheet",
        description = "Writes the reference sheet that knives are photographed on, as a PDF.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Print it at actual size (100 %%), on matt paper. It has a bar of 100 mm in each direction: measure both on"
                    + " the paper and give them to trace or make as --sheet-bars, for no printer is quite true."
        })
final class ReferenceSheetCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Option(
            names = "--page",
            paramLabel = "PAGE",
            defaultValue = "a4",
            description =
                    "Paper: a4, letter, a3 or tabloid. The knife should fit inside the frame. Default: ${DEFAULT-VALUE}.")
    private ReferenceSheet page;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            required = true,
            description = "The PDF to write.")
    private Path output;

    @Override
    public void run() {
        SheetPdf.write(page, output);
        spec.commandLine().getOut().println("Written: " + output);
    }
}
