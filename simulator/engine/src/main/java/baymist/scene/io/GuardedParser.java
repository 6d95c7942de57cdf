package baymist.scene.io;

import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.parser.Parser;

/** Stops a parser before a hostile file fills the stack (nesting) or the memory (nodes): the composer above it is recursive. */
final class GuardedParser implements Parser {
    private final Parser inner;
    private final int deepest;
    private final int most;
    private int depth;
    private int events;

    GuardedParser(Parser inner, int deepest, int most) {
        this.inner = inner;
        this.deepest = deepest;
        this.most = most;
    }

    /** The file is nested too deeply or has too many nodes. */
    static final class LimitException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final SceneProblem problem;
        private final int line;

        LimitException(SceneProblem problem, int line) {
            super(problem.id());
            this.problem = problem;
            this.line = line;
        }

        SceneProblem problem() {
            return problem;
        }

        /** 1-based. */
        int line() {
            return line;
        }
    }

    @Override
    public boolean checkEvent(Event.ID id) {
        return inner.checkEvent(id);
    }

    @Override
    public Event peekEvent() {
        return inner.peekEvent();
    }

    @Override
    public boolean hasNext() {
        return inner.hasNext();
    }

    @Override
    public Event next() {
        Event event = inner.next();
        events++;
        switch (event.getEventId()) {
            case MappingStart, SequenceStart -> depth++;
            case MappingEnd, SequenceEnd -> depth--;
            default -> {}
        }
        if (depth > deepest) {
            throw new LimitException(SceneProblem.TOO_DEEP, lineOf(event));
        }
        if (events > most) {
            throw new LimitException(SceneProblem.TOO_MANY_NODES, lineOf(event));
        }
        return event;
    }

    private static int lineOf(Event event) {
        return event.getStartMark().map(Mark::getLine).orElse(-1) + 1;
    }
}
