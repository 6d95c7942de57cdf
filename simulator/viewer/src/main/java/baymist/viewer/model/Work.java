package baymist.viewer.model;

import baymist.run.RunObserver;

/** Something that takes time: tells the observer how it gets on and ends soon after the observer says so. */
@FunctionalInterface
public interface Work<T> {
    T run(RunObserver observer) throws Exception;
}
