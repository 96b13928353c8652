package preview

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"
)

// slowHeader is how long a browser may take over a request's header (common
// practice).
const slowHeader = 10 * time.Second

// Serve answers on a listener until the context ends, and closes it. Every page
// that waits for events is let go.
func (p *Preview) Serve(ctx context.Context, l net.Listener) error {
	server := &http.Server{
		Handler: p, ReadHeaderTimeout: slowHeader,
		BaseContext: func(net.Listener) context.Context { return ctx },
	}
	defer context.AfterFunc(ctx, func() { server.Close() })()
	err := server.Serve(l)
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return err
}

// events holds a connection open and writes one event a change.
func (p *Preview) events(w http.ResponseWriter, r *http.Request) {
	change := make(chan struct{}, 1)
	p.waiting(change, true)
	defer p.waiting(change, false)
	w.Header().Set("Content-Type", "text/event-stream")
	if err := say(w, ": here\n\n"); err != nil {
		return
	}
	for {
		select {
		case <-r.Context().Done():
			return
		case <-change:
			if say(w, "event: change\ndata:\n\n") != nil {
				return
			}
		}
	}
}

func say(w http.ResponseWriter, text string) error {
	if _, err := w.Write([]byte(text)); err != nil {
		return err
	}
	return http.NewResponseController(w).Flush()
}

func (p *Preview) waiting(change chan struct{}, here bool) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	if p.open == nil {
		p.open = map[chan struct{}]bool{}
	}
	if here {
		p.open[change] = true
	} else {
		delete(p.open, change)
	}
}
