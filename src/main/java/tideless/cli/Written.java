package tideless.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import tideless.report.WriteResult;

/** Tells what came of writing files. */
final class Written {
    private Written() {}

    /**
     * Prints a result and how many files there are of it, or why there are none and nothing else.
     *
     * @param folder where to; null where nothing was to be written
     * @return the exit code
     */
    static int told(CommandSpec spec, WriteResult written, Path folder, Runnable print) {
        PrintWriter err = spec.commandLine().getErr();
        if (!written.written()) {
            err.println(written.problem());
            err.flush();
            return written.refused() ? Exit.FAULT : Exit.FILE;
        }
        print.run();
        if (folder != null) {
            PrintWriter out = spec.commandLine().getOut();
            out.println();
            out.println(
                    written.files().size() == 1
                            ? written.files().get(0).toString()
                            : written.files().size() + " files in " + folder);
            out.flush();
        }
        return Exit.DONE;
    }
}
