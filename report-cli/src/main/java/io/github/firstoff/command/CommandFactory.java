package io.github.firstoff.command;

import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Gives each command the console it speaks through. */
final class CommandFactory implements IFactory {
    private final Console console;
    private final IFactory fallback = CommandLine.defaultFactory();

    CommandFactory(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (SheetCommand.class.isAssignableFrom(type) || type == PlanCommand.class) {
            return type.getDeclaredConstructor(Console.class).newInstance(console);
        }
        return fallback.create(type);
    }
}
