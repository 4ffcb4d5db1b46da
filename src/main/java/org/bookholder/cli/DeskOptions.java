package org.bookholder.cli;

import java.util.List;
import java.util.Optional;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options of the desk's address. */
final class DeskOptions {
    @Option(
            names = "--desk-port",
            paramLabel = "PORT",
            description = "The desk's port. Default: the one it had in this session, or any that is free.")
    private @Nullable Integer port;

    @Option(
            names = "--desk-on-network",
            description =
                    "Let other devices in this network open the desk, with the join code that is shown. What goes "
                            + "over the network is not encrypted.")
    private boolean network;

    @Option(
            names = "--desk-name",
            paramLabel = "NAME",
            split = ",",
            description = "A name that the desk is reached by, where a TLS proxy stands before it.")
    private List<String> names = List.of();

    /** The request that the options describe. */
    DeskRequest request() throws ProblemException {
        if (port != null && (port < 1 || port > 0xFFFF)) {
            throw new ProblemException("there is no port " + port, "--desk-port", "give a number from 1 to 65535");
        }
        return new DeskRequest(Optional.ofNullable(port), network, names);
    }
}
