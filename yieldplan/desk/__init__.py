"""The stories, one a file: plan a job, quick bid, check a plan, explain a part."""
